"""What a line says besides its name and length: one class of node for each kind of fact."""

from __future__ import annotations

from typing import TypeAlias

from trimlang.diagnostics import Span

# Imported under their own names: a pass finds all facts here, whichever module holds them.
from trimlang.language.block_facts import Backbanded as Backbanded
from trimlang.language.block_facts import BlockPrice as BlockPrice
from trimlang.language.block_facts import BlockTall as BlockTall
from trimlang.language.block_facts import BlockWide as BlockWide
from trimlang.language.block_facts import CornerBlocked as CornerBlocked
from trimlang.language.block_facts import Plinthed as Plinthed
from trimlang.language.block_facts import WrittenMember as WrittenMember
from trimlang.language.box_facts import BoxesMargin as BoxesMargin
from trimlang.language.box_facts import BoxesTall as BoxesTall
from trimlang.language.box_facts import BoxesWide as BoxesWide
from trimlang.language.ceiling_facts import BeamAcross as BeamAcross
from trimlang.language.ceiling_facts import BeamDeep as BeamDeep
from trimlang.language.ceiling_facts import CeilingRising as CeilingRising
from trimlang.language.ceiling_facts import OfCeiling as OfCeiling
from trimlang.language.ceiling_facts import PerCent as PerCent
from trimlang.language.ceiling_facts import TransitionAt as TransitionAt
from trimlang.language.ceiling_facts import Turns as Turns
from trimlang.language.curve_facts import Bend as Bend
from trimlang.language.curve_facts import Curves as Curves
from trimlang.language.curve_facts import Flexible as Flexible
from trimlang.language.curve_facts import OfCurve as OfCurve
from trimlang.language.curve_facts import RadiusGiven as RadiusGiven
from trimlang.language.curve_facts import WrittenRadius as WrittenRadius
from trimlang.language.end_facts import AtEnd as AtEnd
from trimlang.language.end_facts import BlockHere as BlockHere
from trimlang.language.end_facts import Bullnose as Bullnose
from trimlang.language.end_facts import CopedHere as CopedHere
from trimlang.language.end_facts import Diagonal as Diagonal
from trimlang.language.end_facts import EndFact as EndFact
from trimlang.language.end_facts import Implied as Implied
from trimlang.language.end_facts import MitredHere as MitredHere
from trimlang.language.end_facts import MitreThere as MitreThere
from trimlang.language.end_facts import OutOfPlumb as OutOfPlumb
from trimlang.language.end_facts import Side as Side
from trimlang.language.end_facts import TrimEnd as TrimEnd
from trimlang.language.end_facts import WrittenCorner as WrittenCorner
from trimlang.language.end_facts import WrittenEnd as WrittenEnd
from trimlang.language.end_facts import WrittenTaken as WrittenTaken
from trimlang.language.opening_facts import BothFaces as BothFaces
from trimlang.language.opening_facts import Called as Called
from trimlang.language.opening_facts import Cased as Cased
from trimlang.language.opening_facts import ClearHeight as ClearHeight
from trimlang.language.opening_facts import Entrance as Entrance
from trimlang.language.opening_facts import FourSides as FourSides
from trimlang.language.opening_facts import Hinged as Hinged
from trimlang.language.opening_facts import Jambed as Jambed
from trimlang.language.opening_facts import SillHeight as SillHeight
from trimlang.language.opening_facts import Stooled as Stooled
from trimlang.language.opening_facts import Stops as Stops
from trimlang.language.opening_facts import Swings as Swings
from trimlang.language.opening_facts import Uncased as Uncased
from trimlang.language.stack_facts import AssemblyMember as AssemblyMember
from trimlang.language.stack_facts import InFrontOf as InFrontOf
from trimlang.language.stack_facts import StandsOn as StandsOn
from trimlang.language.stair_facts import LengthTaken as LengthTaken
from trimlang.language.stair_facts import LevelReturn as LevelReturn
from trimlang.language.stair_facts import Notch as Notch
from trimlang.language.stair_facts import OfStair as OfStair
from trimlang.language.stair_facts import OpenSide as OpenSide
from trimlang.language.stair_facts import RiseOver as RiseOver
from trimlang.language.stair_facts import Rising as Rising
from trimlang.language.stair_facts import TakenAlong as TakenAlong
from trimlang.language.stated import Stated as Stated
from trimlang.language.stick_facts import BatchBy as BatchBy
from trimlang.language.stick_facts import LeastOrder as LeastOrder
from trimlang.language.stick_facts import OneWay as OneWay
from trimlang.language.stick_facts import RandomLengths as RandomLengths
from trimlang.language.written import Angle as Angle
from trimlang.language.written import Measure, Word
from trimlang.record import record

# ---- a trim's line --------------------------------------------------------------


@record
class Thick:
    """``9/16 in thick``."""

    length: Measure
    span: Span


@record
class Tall:
    """``5 1/4 in tall``, or ``wide`` of a crown or casing."""

    length: Measure
    span: Span


@record
class Spring:
    """``spring 38 deg``."""

    angle: Angle
    span: Span


@record
class Girth:
    """``girth 6 1/4 in``: how far a tape goes over the profile that is painted."""

    length: Measure
    span: Span


@record
class Material:
    """Any other words of a trim's line: ``mdf``, ``primed``."""

    words: Word
    span: Span


@record
class Supplier:
    """``from "Hill Lumber"``: where a trim is bought."""

    name: Word
    span: Span


@record
class ProfileCode:
    """``code "B-514"``: what the supplier calls a trim's profile."""

    code: Word
    span: Span


# ---- rooms, runs and openings -----------------------------------------------------


@record
class NamedTrim:
    """A trim that a room or run gets; ``begins`` where the word ``trim`` stands before it."""

    trim: Word
    begins: bool
    span: Span


@record
class Note:
    """``note "behind the radiator"``."""

    text: Word
    span: Span


@record
class OpenWalk:
    """``open walk``."""

    span: Span


@record
class SquareEnds:
    """``square`` on a loose piece: both ends."""

    span: Span


@record
class Spliced:
    """``splice`` on a run, or ``no splice``."""

    wanted: bool
    span: Span


@record
class Without:
    """``no shoe``."""

    trim: Word
    span: Span


@record
class FirstStud:
    """``first stud 7 1/2 in``."""

    at: Measure
    span: Span


@record
class FloorGap:
    """``floor gap 3/16 in``."""

    gap: Measure
    span: Span


@record
class Unread:
    """A part of a line that could not be read: it may be what a later pass finds missing."""

    span: Span


# By the line that may say them, so that a fact out of its place fails the type check.
TrimFact: TypeAlias = (
    Thick | Tall | Spring | Girth | InFrontOf | StandsOn | Material | Flexible | OneWay
)
StockFact: TypeAlias = Supplier | ProfileCode | LeastOrder | RandomLengths | BatchBy
BlockFact: TypeAlias = Thick | BlockWide | BlockTall | BlockPrice | Material
WallFact: TypeAlias = (
    NamedTrim
    | Note
    | OpenWalk
    | AtEnd
    | SquareEnds
    | TrimEnd
    | Stops
    | Spliced
    | Without
    | FirstStud
    | FloorGap
    | OfStair
    | OfCurve
    | OfCeiling
    | Called
    | Entrance
    | Cased
    | Uncased
    | ClearHeight
    | SillHeight
    | FourSides
    | Stooled
    | Jambed
    | BothFaces
    | Plinthed
    | CornerBlocked
    | Backbanded
    | Hinged
    | Swings
    | BoxesTall
    | BoxesWide
    | BoxesMargin
    | WrittenTaken
    | Stated
    | Unread
)
"""What a room's, a run's or an opening's line may say."""
Fact: TypeAlias = TrimFact | StockFact | BlockFact | EndFact | WallFact


def named_trims(fact: Fact) -> tuple[Word, ...]:
    """Return the words of a fact that name a trim."""
    # A fact that names a trim and is missing here would keep the old name when the trim is renamed.
    match fact:
        case Turns(trim=trim):
            return (trim,)
        case NamedTrim(trim=trim) | Without(trim=trim) | Jambed(trim=trim):
            return (trim,)
        case InFrontOf(trim=trim) | StandsOn(trim=trim):
            return (trim,)
        case Backbanded(trim=trim):
            return (trim,)
        case Stooled(stool=stool, apron=apron):
            return (stool,) if apron is None else (stool, apron)
        case Cased(casing=casing, head=head):
            return (casing,) if head is None else (casing, head)
        # Without “of” the tape lay over the scraps of any trim, and no name stands there.
        case WrittenTaken(of=Word() as trim):
            return (trim,)
        case Stops(trims=trims) | BlockHere(trims=trims):
            return trims
        case TrimEnd(trim=trim, end=end):
            # The brackets of an end name trims too: a block stops some and lets others pass.
            return (trim, *(word for said in end.facts for word in named_trims(said)))
        case AtEnd(end=end):
            return tuple(word for said in end.facts for word in named_trims(said))
    return ()
