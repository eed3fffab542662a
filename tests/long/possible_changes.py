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
    (r"(?<= )\+(?= )", "-", "+ dormant::Plus{@} +"),
    (r"(?<= )-(?= )", "+", "- dormant::Minus{@} -"),
    (r"(?<= )\*(?= )", "/", "* dormant::Times{@} *"),
    (r"(?<= )/(?= )", "*", "/ dormant::Over{@} /"),
    (r"(?<= )\+=(?= )", "-=", "+= dormant::MoreBy{@} +="),
    (r"(?<= )-=(?= )", "+=", "-= dormant::LessBy{@} -="),
    (r"(?<= )&&(?= )", "||", "&& dormant::leftOfAnd(@) || dormant::rightOfAnd(@) &&"),
    (r"(?<= )\|\|(?= )", "&&", "&& dormant::leftOfOr(@) || dormant::rightOfOr(@) &&"),
    (r"\bstd::min\b", "std::max", "dormant::least<@>"),
    (r"\bstd::max\b", "std::min", "dormant::most<@>"),
    (r"\btrue\b", "false", "dormant::value(@, true, false)"),
    (r"\bfalse\b", "true", "dormant::value(@, false, true)"),
    (r"\bstd::floor\b", "std::ceil", "dormant::roundedDown<@>"),
    (r"\bstd::ceil\b", "std::floor", "dormant::roundedUp<@>"),
    (r"(?<=[ (])!(?=[\w(])", "", "dormant::Not{@}->*"),
]]
NUMBER = re.compile(r"(?<![\w.'])(\d+)(\.\d+)?(?![\w.'])")
STRING = re.compile(r'"(?:[^"\\]|\\.)*"|\'(?:[^\'\\]|\\.)*\'')
NO_RESULT = re.compile(r"^\s*(#|//|static_assert|assert|using |namespace |template)|\.reserve\(")
CONSTANT = re.compile(r"^(\s*)(?:inline |static )?constexpr (?=[^()]*(?:=|\{))")


@dataclasses.dataclass
class Change:
    name: str  # of the file
    at: int  # its line, from 0
    start: int
    end: int
    instead: str
    woven: str
    line: str
    is_constant: bool

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


def changes_of(name, text):
    for at, line in enumerate(text.split("\n")):
        if NO_RESULT.search(line):
            continue
        code = code_of(line)
        is_constant = CONSTANT.match(code) is not None
        value = "dormant::early" if is_constant else "dormant::value"
        for pattern, instead, woven in CHANGES:
            for found in pattern.finditer(code):
                yield Change(name, at, *found.span(), instead, woven.replace("dormant::value", value), line, is_constant)
        for found in NUMBER.finditer(code):
            whole, part = found.groups()
            other = str(int(whole) + 1) if part is None else f"{float(whole + part) * 1.02:.12g}"
            if part is not None and "." not in other:
                other += ".0"
            yield Change(name, at, *found.span(), other, f"{value}(@, {found.group()}, {other})", line, is_constant)


def woven_text(text, numbered):
    """The file with these changes in it, asleep. Pairs of a number and a change."""
    lines = text.split("\n")
    for at in {change.at for _, change in numbered}:
        here = sorted(((number, change) for number, change in numbered if change.at == at),
                      key=lambda pair: pair[1].start, reverse=True)
        line = lines[at]
        for number, change in here:
            line = line[: change.start] + change.woven.replace("@", str(number)) + line[change.end:]
        if any(change.is_constant for _, change in here):
            line = CONSTANT.sub(r"\1const ", line, count=1)
        lines[at] = line
    return '#include "tests/long/dormant_change.h"\n#line 1\n' + "\n".join(lines)
