"""Plain records: data classes that take next to nothing to define.

The standard decorator writes the methods of every class as text and compiles it, which takes as
long as loading a module does. Here the same few methods serve all classes; what the standard
library tells of a data class (``fields``, ``replace``) it tells of these too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from operator import attrgetter
from typing import Any, NoReturn, TypeVar, dataclass_transform, overload

T = TypeVar("T")


@overload
def record(cls: type[T], /) -> type[T]: ...


@overload
def record(*, eq: bool = True, frozen: bool = True) -> Callable[[type[T]], type[T]]: ...


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type[T] | None = None, /, *, eq: bool = True, frozen: bool = True) -> Any:
    """Make a class a record of its annotated fields; unless ``frozen`` is false none is set again.

    Two are equal where their fields are, and are told by them; where ``eq`` is false each is equal
    to itself alone.
    """

    def made(one: type[T]) -> type[T]:
        # Without a line of its own the signature would be written out, which is slow.
        one.__doc__ = one.__doc__ or one.__name__
        dataclass(init=False, repr=False, eq=False, match_args=False)(one)
        parts = fields(one)  # type: ignore[arg-type]
        methods: dict[str, Any] = {
            "__init__": _init(parts, getattr(one, "__post_init__", None)),
        }
        if frozen:
            methods["__setattr__"], methods["__delattr__"] = _set, _delete
        if eq:
            methods["__repr__"] = _told(tuple(part.name for part in parts if part.repr))
            compared = _compared(tuple(part.name for part in parts if part.compare))
            methods["__eq__"], methods["__hash__"] = compared if frozen else (compared[0], None)
        for name, method in methods.items():
            if name not in one.__dict__:
                setattr(one, name, method)
        return one

    return made if cls is None else made(cls)


def _init(
    parts: tuple[Field[Any], ...], after: Callable[[Any], None] | None
) -> Callable[..., None]:
    order = tuple(part.name for part in parts if not part.kw_only)
    defaults = {part.name: part.default for part in parts if part.default is not MISSING}
    makers = [(p.name, p.default_factory) for p in parts if p.default_factory is not MISSING]
    names = {part.name for part in parts}
    count, placed = len(names), len(order)

    def __init__(self: Any, *given: Any, **named: Any) -> None:
        state = self.__dict__
        if defaults:
            state.update(defaults)
        state.update(zip(order, given))  # noqa: B905
        strange = len(given) > placed
        if named:
            state.update(named)
            strange |= not (names >= named.keys() and named.keys().isdisjoint(order[: len(given)]))
        for name, make in makers:
            if name not in state:
                state[name] = make()
        if strange or len(state) != count:
            wrong = ", ".join(sorted(names ^ state.keys())) or "a value twice"
            raise TypeError(f"{type(self).__name__}: {wrong} is missing or too much")
        if after:
            after(self)

    return __init__


def _set(self: object, name: str, _value: object) -> NoReturn:
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def _delete(self: object, name: str) -> NoReturn:
    raise FrozenInstanceError(f"cannot delete field {name!r}")


def _told(names: tuple[str, ...]) -> Callable[[Any], str]:
    def __repr__(self: Any) -> str:
        said = ", ".join(f"{name}={getattr(self, name)!r}" for name in names)
        return f"{type(self).__qualname__}({said})"

    return __repr__


def _compared(names: tuple[str, ...]) -> tuple[Callable[..., Any], Callable[..., int]]:
    values = attrgetter("__class__", *names)

    def __eq__(self: object, other: object) -> Any:
        return values(self) == values(other) if type(other) is type(self) else NotImplemented

    def __hash__(self: object) -> int:
        return hash(values(self))

    return __eq__, __hash__
