"""Reads blocks, which are bought by the piece, and heads of several parts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.diagnostics.near_words import listed
from trimlang.diagnostics.place import place
from trimlang.diagnostics.suggestion import did_you_mean
from trimlang.language import facts, tree
from trimlang.lengths.tape import Unit
from trimlang.record import record
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings, length, money, not_negative
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.on_walls import CasingBlock, HeadMember
from trimlang.survey.trims import lost_names


@record
class ByName:
    """What a job's openings may name besides trims: its blocks, and its heads of several parts.

    A head that cannot be made as it is written is there without parts, and a block that cannot
    be read is one of the ``lost``, so that neither is reported as unknown too.
    """

    blocks: Mapping[str, CasingBlock]
    heads: Mapping[str, tuple[HeadMember, ...]]
    trims: Mapping[str, Trim]
    lost: frozenset[str]


def read_by_name(
    lines: Iterable[tree.Statement], trims: Mapping[str, Trim], unit: Unit, findings: Findings
) -> ByName:
    """Return the job's blocks and heads, and report names that are taken."""
    lines = tuple(lines)
    taken: dict[str, Span] = {name: trim.span for name, trim in trims.items()}
    lost = lost_names(lines, "block")
    blocks: dict[str, CasingBlock] = {}
    heads: dict[str, tuple[HeadMember, ...]] = dict.fromkeys(lost_names(lines, "head"), ())
    for line in lines:
        if isinstance(line, tree.AssemblyLine):
            taken.setdefault(line.name.text, line.name.span)
        if not isinstance(line, tree.BlockLine | tree.HeadLine):
            continue
        word = line.name
        if word.text in taken:
            where = place(taken[word.text], word.span)
            findings.say("T292", word.span, name=word.text, line=where)
            continue
        taken[word.text] = word.span
        if isinstance(line, tree.HeadLine):
            heads[word.text] = _head(line, trims, unit, findings)
        elif (block := _block(line, unit, findings)) is not None:
            blocks[word.text] = block
        else:
            # Openings that name it are not to be told that there is no such block.
            lost.add(word.text)
    return ByName(blocks=blocks, heads=heads, trims=trims, lost=frozenset(lost))


def find_block(word: tree.Word, known: ByName, findings: Findings) -> CasingBlock | None:
    """Return the block of this name; None, and a finding, where there is none."""
    block = known.blocks.get(word.text)
    if block is None and word.text not in known.lost:
        there = f"Add a line such as: block {word.text}: 3 in wide, 7 in tall, at 6.50"
        if known.blocks:
            there = f"The job's blocks are {listed(known.blocks)}."
        remedy = did_you_mean(word.text, tuple(known.blocks), there)
        findings.say("T294", word.span, name=word.text, remedy=remedy)
    return block


def _block(line: tree.BlockLine, unit: Unit, findings: Findings) -> CasingBlock | None:
    sizes: dict[type, Fraction | None] = {}
    material: list[str] = []
    price: Fraction | None = Fraction(0)
    for fact in line.facts:
        match fact:
            case facts.BlockWide() | facts.BlockTall() | facts.Thick():
                what = f"a size of block “{line.name.text}”"
                sizes[type(fact)] = length(fact.length, unit, findings, what=what, fine=True)
            case facts.BlockPrice():
                price = money(fact.price, findings)
            case facts.Material():
                material.append(fact.words.text)
    if facts.BlockWide not in sizes or facts.BlockTall not in sizes:
        findings.say("T293", line.name.span, block=line.name.text)
        return None
    wide, tall = sizes[facts.BlockWide], sizes[facts.BlockTall]
    if wide is None or tall is None or price is None:
        return None
    return CasingBlock(
        name=line.name.text,
        wide=wide,
        tall=tall,
        thickness=sizes.get(facts.Thick),
        material=tuple(material),
        price=price,
        span=line.name.span,
    )


def _head(
    line: tree.HeadLine, trims: Mapping[str, Trim], unit: Unit, findings: Findings
) -> tuple[HeadMember, ...]:
    members: list[HeadMember] = []
    for written in line.members:
        name = written.trim.text
        if name not in trims:
            unknown_trim(written.trim, trims, findings)
            return ()
        trim, overhang = trims[name], None
        # Only what is in the same head is behind it there; on a wall it may stand before another
        # trim.
        behind = trim.in_front_of if any(one.trim == trim.in_front_of for one in members) else None
        if written.overhang is not None:
            overhang = not_negative(written.overhang, unit, findings, what="an overhang")
            # It is nailed to the face of that part and ends where that ends, so an overhang of its
            # own says something that cannot be built.
            if behind is not None:
                findings.say("T436", written.overhang.span, trim=name, behind=behind)
        if written.returned and trim.thickness is None:
            findings.say("T211", written.span, joint="return", trim=name, run="the head")
        if trim.height is None and trim.spring is None:
            findings.say("T241", written.trim.span, trim=name)
        members.append(
            HeadMember(
                trim=name,
                overhang=overhang or Fraction(0),
                returned=written.returned,
                behind=behind,
            )
        )
    return tuple(members)
