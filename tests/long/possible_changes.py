# SPDX-License-Identifier: GPL-3.0-or-later
"""Where core can be changed a little, what stands there instead, and how the change is woven in to lie dormant."""
import dataclasses
import re

# What is looked for, what stands there instead, and how both are written in one (@ is the change's number).
CHANGES = [(re.compile(pattern), instead, woven) for pattern, instead, woven in [
    (r"(?<= )<(?= )", "<=", "< dormant::Less{@} <"),
    (r"(?<= )<=(?= )", "<", "<= dormant::LessOrSame{@} <="),
    (r"(?<= )>(?= )", ">=", "> dormant::More{@} >"),
    (r"(?<= )>=(?= )", ">", ">= dormant::MoreOrSame{@} >="),
    (r"(?<= )==(?= )", "!=", "== dormant::Same{@} =="),
    (r"(?<= )!=(?= )", "==", "!= dormant::Other{@} !="),
    (r"(?<=[^_] )\+(?= [^_])", "-", "+ dormant::Plus{@} +"),  # words (_, see code_of) have no minus
    (r"(?<= )-(?= )", "+", "- dormant::Minus{@} -"),
    (r"(?<= )\*(?= )", "/", "* dormant::Times{@} *"),
    (r"(?<= )/(?= )", "*", "/ dormant::Over{@} /"),
    (r"(?<= )\+=(?= [^_])", "-=", "+= dormant::MoreBy{@} +="),
    (r"(?<= )-=(?= )", "+=", "-= dormant::LessBy{@} -="),
    (r"(?<= )&&(?= )", "||", "&& dormant::leftOfAnd(@) || dormant::rightOfAnd(@) &&"),
    (r"(?<= )\|\|(?= )", "&&", "&& dormant::leftOfOr(@) || dormant::rightOfOr(@) &&"),
    (r"\bstd::min\b", "std::max", "dormant::Least<@>::of"),
    (r"\bstd::max\b", "std::min", "dormant::Most<@>::of"),
    (r"\btrue\b", "false", "dormant::value(@, true, false)"),
    (r"\bfalse\b", "true", "dormant::value(@, false, true)"),
    (r"\bstd::floor\b", "std::ceil", "dormant::roundedDown<@>"),
    (r"\bstd::ceil\b", "std::floor", "dormant::roundedUp<@>"),
    (r"(?<=[ (])!(?=[\w(])", "", "dormant::Not{@}->*"),
]]
NUMBER = re.compile(r"(?<![\w.'])(?<!\de-)(\d+)(\.\d+)?(?![\w.'])")
STRING = re.compile(r'"(?:[^"\\]|\\.)*"|\'(?:[^\'\\]|\\.)*\'')
NO_RESULT = re.compile(r"^\s*(#|//|static_assert|assert|using |namespace |template)|\.reserve\(")
CONSTANT = re.compile(r"^(\s*)(?:inline |static )?constexpr (?=[^()]*?\b(\w+)\s*(?:=|\{))")


@dataclasses.dataclass(frozen=True)
class Constant:
    """Where a constexpr is declared that stands outside of functions, or in one."""
    begins: int  # its first and last line, from 0
    ends: int
    name: str
    is_global: bool


@dataclasses.dataclass
class Change:
    name: str  # of the file
    at: int  # its line, from 0
    start: int
    end: int
    instead: str
    woven: str
    line: str
    constant: Constant | None  # that it is part of

    @property
    def before(self):
        return self.line.strip()

    @property
    def changed_line(self):
        return self.line[: self.start] + self.instead + self.line[self.end:]

    @property
    def after(self):
        return self.changed_line.strip()

    def __str__(self):
        return f"{self.name}:{self.at + 1}\n    {self.before}\n    {self.after}"


def code_of(line):
    """The line with its strings and comment blanked, at its full length."""
    blank = STRING.sub(lambda found: "_" * len(found.group()), line)
    return blank.split("//")[0]


def constants_in(codes):
    """By line."""
    constants = {}
    for begins, code in enumerate(codes):
        if found := CONSTANT.match(code):
            ends = begins
            while ends + 1 < len(codes) and not codes[ends].rstrip().endswith(";"):
                ends += 1
            constant = Constant(begins, ends, found.group(2), is_global=not found.group(1))
            constants |= {at: constant for at in range(begins, ends + 1)}
    return constants


def changes_of(name, text):
    lines = text.split("\n")
    codes = [code_of(line) for line in lines]
    constants = constants_in(codes)
    for at, (line, code) in enumerate(zip(lines, codes)):
        if NO_RESULT.search(line):
            continue
        constant = constants.get(at)
        value = "dormant::early" if constant else "dormant::value"
        for pattern, instead, woven in CHANGES:
            for found in pattern.finditer(code):
                yield Change(name, at, *found.span(), instead, woven.replace("dormant::value", value), line, constant)
        for found in NUMBER.finditer(code):
            whole, part = found.groups()
            other = str(int(whole) + 1) if part is None else f"{float(whole + part) * 1.02:.12g}"
            if part is not None and "." not in other:
                other += ".0"
            yield Change(name, at, *found.span(), other, f"{value}(@, {found.group()}, {other})", line, constant)


def woven_text(text, numbered):
    """The file with these changes in it, asleep. Pairs of a number and a change."""
    lines = text.split("\n")
    for number, change in sorted(numbered, key=lambda pair: pair[1].start, reverse=True):
        line = lines[change.at]
        lines[change.at] = line[: change.start] + change.woven.replace("@", str(number)) + line[change.end:]
    for constant in {change.constant for _, change in numbered if change.constant}:
        of_it = [str(number) for number, change in numbered if change.constant == constant]
        lines[constant.begins] = CONSTANT.sub(r"\1const ", lines[constant.begins], count=1)
        if constant.is_global:  # It has its value before main, so that it is noted where it is read.
            lines[constant.begins] = re.sub(rf"\b{constant.name}\b", f"{constant.name}_", lines[constant.begins], count=1)
            lines[constant.ends] += (f"\n#define {constant.name} dormant::read<{', '.join(of_it)}>({constant.name}_)"
                                     f"\n#line {constant.ends + 2}")
    return '#include "tests/long/dormant_change.h"\n#line 1\n' + "\n".join(lines)
