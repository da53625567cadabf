"""Words of a list of measurements, in the languages that instruments and phones are set to.

The words are those of everyday dictionaries, from memory, written without accents: ``plain``
makes a heading or a name like them.
"""

from __future__ import annotations

import unicodedata
from enum import StrEnum
from types import MappingProxyType
from typing import Final

from trimlang.language.vocabulary import GAP_WORDS, JOTTED, NO_WALLS


class ListColumn(StrEnum):
    """What a column of a list of measurements may hold."""

    LENGTH = "length"
    WALL = "wall"
    ROOM = "room"
    NOTE = "note"
    UNIT = "unit"
    LEFT = "left end"
    RIGHT = "right end"
    CORNER = "corner"
    FEET = "length's feet"


HEADINGS: Final = MappingProxyType(
    {
        word: column
        for column, words in {
            ListColumn.LENGTH: "length distance value measurement measure reading result"
            " dimension size"
            " lange laenge wert messwert mass strecke abstand ergebnis"
            " longitud medida valor distancia longueur mesure valeur cote"
            " lunghezza misura valore lengte afstand waarde maat comprimento distanza",
            ListColumn.ROOM: "room place location space area folder group project raum zimmer"
            " ort raumname"
            " projekt ordner habitacion cuarto sala lugar estancia piece chambre lieu salle"
            " stanza locale kamer ruimte quarto",
            ListColumn.WALL: "wall name label id title point item no nr number pos index"
            " wand bezeichnung"
            " nummer titel pared nombre numero mur nom libelle titre parete nome muur naam"
            " parede titulo titolo",
            ListColumn.NOTE: "note notes comment comments remark remarks description text memo"
            " content body"
            " notiz notizen bemerkung bemerkungen kommentar beschreibung inhalt nota notas"
            " comentario descripcion contenido texto remarque commentaire contenu texte"
            " contenuto testo opmerking inhoud tekst",
            ListColumn.UNIT: "unit units einheit einheiten unidad unidades unite unites unita"
            " eenheid unidade",
            ListColumn.LEFT: "left links linke linkes izquierda izq gauche sinistra esquerda",
            ListColumn.RIGHT: "right rechts rechte rechtes derecha der droite destra direita",
            ListColumn.CORNER: "corner corners ecke ecken eck innen aussen innenecke aussenecke"
            " innenecken aussenecken inside outside joint end ends esquina rincon coin angolo hoek",
        }.items()
        for word in words.split()
    }
)
"""The words that a heading may use for a column; those for the length first."""

_SUMS: Final = frozenset(
    "total totals subtotal sum summe gesamt gesamtlange insgesamt zwischensumme suma perimeter"
    " perimetro umfang somme totale totaal omtrek".split()
)


def is_a_sum(name: str) -> bool:
    """Tell whether a row's name says that its number is the sum of others."""
    words = [plain(word).strip(".:=") for word in name.split()]
    return bool(words) and (words[0] in _SUMS or words[-1] in _SUMS)


_GAPS_ELSEWHERE: Final = MappingProxyType(
    {
        word: gap
        for gap, words in {
            "door": "tur tuer ture puerta porte porta deur",
            "window": "fenster ventana fenetre finestra raam venster janela",
            "stair": "treppe escalera escalier scala trap escada",
            "cabinets": "schrank schranke kuchenzeile armario armarios armoire mobili kast",
            "radiator": "heizung heizkorper radiador radiateur radiatore",
        }.items()
        for word in words.split()
    }
)

_WALL_WORDS: Final = frozenset("wall wand pared mur muro muur parete parede".split())
"""Words that, at the end of a name, say that a wall is meant: “window wall”."""

DIRECTIONS: Final = frozenset(
    "n e s w o north east south west left right front back rear"
    " nord ost sud west sued links rechts hinten vorne norte sur este oeste izquierda derecha"
    " est ouest gauche droite ovest noord oost zuid sul leste".split()
)
"""What the walls of a room are called, behind the room's name."""


def plain(word: str) -> str:
    """Return a word in small letters without its accents: “Länge” as “lange”."""
    parts = unicodedata.normalize("NFKD", word.casefold())
    return "".join(sign for sign in parts if not unicodedata.combining(sign))


def gap_word(name: str) -> str | None:
    """Return the word that begins the line of an opening or bare wall, None for a wall."""
    parts = [plain(word) for word in name.split()]
    if not parts or parts[-1] in _WALL_WORDS:
        return None
    jotted = {short: begins.split()[0] for short, begins in JOTTED.items()}
    for known in ({word: word for word in GAP_WORDS}, _GAPS_ELSEWHERE, NO_WALLS, jotted):
        found = next((known[word] for word in parts if word in known), None)
        if found is not None:
            return found
    return None


def room_and_wall(name: str) -> tuple[str, str] | None:
    """Return the parts of “Kitchen north”, a room and its wall; None where no room is in the name.

    >>> room_and_wall("Living room north wall")
    ('Living room', 'north wall')
    """
    words = name.split()
    at = len(words) - 1
    if at > 0 and plain(words[at]) in _WALL_WORDS:
        at -= 1
    # “Wall north” has no room in it.
    if {plain(word).strip(".:") for word in words[:at]} <= _WALL_WORDS:
        return None
    if at < 1 or plain(words[at]).strip(".") not in DIRECTIONS:
        return None
    return " ".join(words[:at]).rstrip(",:-"), " ".join(words[at:])
