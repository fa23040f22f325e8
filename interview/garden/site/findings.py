"""What speaks for and against: the spot."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.site import questions as site
from interview.garden.site import surroundings
from interview.garden.site.results import SiteResults
from interview.garden.site.surroundings import Owner, Rules
from interview.quantities.evidence import Finding


def permission_findings(found: SiteResults) -> Iterator[Finding]:
    answers = found.answers
    owner = answers.get(site.PERMISSION)
    owners = {"own": Owner.OWN, "written": Owner.WRITTEN, "no": Owner.NO}
    yield surroundings.ownership_finding(owners[owner] if owner else None)
    asked = answers.get(site.RULES_CHECKED)
    rules = {
        "not_needed": Rules.CLEAR,
        "granted": Rules.CLEAR,
        "pending": Rules.PENDING,
        "not_checked": Rules.NOT_ASKED,
    }
    yield surroundings.permit_finding(rules[asked] if asked else None)
    yield surroundings.children_finding(answers.get(site.CHILDREN))
