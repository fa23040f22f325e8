"""The interview on plain lines, and the streams it runs on.

Decided here:

- What an output cannot write has a stand-in (``plain/stand_ins``), never a quotation mark or a
  comma; a character of a drawing has one of one character. HTML keeps all by their numbers.
- On plain lines a question is read once: a refusal or a command says its reply alone. Forward is
  the next question without an answer; after a visit (``:go``) it is the place that was left.
"""
