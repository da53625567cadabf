"""Writes the files that Vim and Emacs colour job files by, from the grammar's own words.

As with the TextMate grammar a test holds the files in ``grammar/`` against the grammar, so that
no word can be forgotten.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from trimlang.language.highlighting import UNITS
from trimlang.language.vocabulary import line_words, spellings

VIM_FILE: Final = "trim.vim"
EMACS_FILE: Final = "trim-mode.el"


def vim_syntax() -> str:
    """Return the text of a syntax file for Vim and Neovim."""
    lines = [
        '" Colours for trim job files, made from their grammar.  Put this file into the folder',
        '" syntax of your Vim folder, and have the file type set:',
        '"   autocmd BufNewFile,BufRead *.trim,*.site setfiletype trim',
        'if exists("b:current_syntax")',
        "  finish",
        "endif",
        "syntax case ignore",
        "syntax iskeyword @,48-57,_,-,192-255",
    ]
    for group, words in _groups():
        lines += [f"syntax keyword {group} {word}" for word in words if " " not in word]
        lines += [
            f"syntax match {group} /\\<{word.replace(' ', chr(92) + 's' + chr(92) + '+')}\\>/"
            for word in words
            if " " in word
        ]
    lines += [
        r"syntax match trimNumber /\<\d\+\(\.\d\+\)\?\>\|\<\d\+\/\d\+\>\|[¼½¾⅐-⅞]/",
        r"syntax match trimRun /^\s*[[:alnum:]_.-]\+\s*:/",
        'syntax region trimString start=/["“]/ end=/["”]/ oneline',
        "syntax match trimComment /#.*$/",
    ]
    lines += [f"highlight default link {group} {shown}" for group, shown in _VIM_SHOWN.items()]
    return "\n".join([*lines, 'let b:current_syntax = "trim"']) + "\n"


def emacs_mode() -> str:
    """Return the text of a major mode for Emacs."""
    lines = [
        ";;; trim-mode.el --- Colours for trim job files  -*- lexical-binding: t -*-",
        ";; Made from the language's grammar.  Load it, and files in .trim and .site are coloured.",
        "(defvar trim-mode-syntax-table",
        "  (let ((table (make-syntax-table)))",
        '    (modify-syntax-entry ?\\# "<" table)',
        '    (modify-syntax-entry ?\\n ">" table)',
        '    (modify-syntax-entry ?- "w" table)',
        "    table))",
        "(defvar trim-mode-keywords",
        "  '(",
    ]
    for group, words in _groups():
        listed = "\\\\|".join(word.replace(" ", "[ \\t]+") for word in words)
        lines.append(f'    ("\\\\<\\\\({listed}\\\\)\\\\>" . {_EMACS_SHOWN[group]})')
    lines += [
        '    ("^[ \\t]*\\\\([[:alnum:]_.-]+\\\\)[ \\t]*:" 1 font-lock-function-name-face)))',
        ";;;###autoload",
        '(define-derived-mode trim-mode prog-mode "Trim"',
        '  (setq-local comment-start "# ")',
        "  (setq-local font-lock-defaults '(trim-mode-keywords nil t)))",
        ";;;###autoload",
        "(add-to-list 'auto-mode-alist '(\"\\\\.\\\\(trim\\\\|site\\\\)\\\\'\" . trim-mode))",
        "(provide 'trim-mode)",
        ";;; trim-mode.el ends here",
    ]
    return "\n".join(lines) + "\n"


_VIM_SHOWN: Final = {
    "trimStatement": "Statement",
    "trimJoint": "Constant",
    "trimUnit": "Type",
    "trimWord": "Keyword",
    "trimNumber": "Number",
    "trimRun": "Identifier",
    "trimString": "String",
    "trimComment": "Comment",
}
_EMACS_SHOWN: Final = {
    "trimStatement": "font-lock-keyword-face",
    "trimJoint": "font-lock-constant-face",
    "trimUnit": "font-lock-type-face",
    "trimWord": "font-lock-builtin-face",
}


def _groups() -> Iterator[tuple[str, tuple[str, ...]]]:
    """Yield the grammar's words in groups, each word once."""
    spelled = spellings()
    begins = {way for way in line_words() if way[:1].isalpha()}
    joints = set(spelled["JOINT"])
    units = {way for name in UNITS for way in spelled[name]} - joints
    # Each word is in one group only: an editor would give a word of two groups the colour of
    # either.
    others = {way for ways in spelled.values() for way in ways} - begins - joints - units
    groups = (
        ("trimStatement", begins - joints),
        ("trimJoint", joints - begins),
        ("trimUnit", units - begins),
        ("trimWord", others),
    )
    for group, of in groups:
        # the longest first, so that “in” does not hide “in-corner”
        words = sorted((one for one in of if one[:1].isalpha()), key=lambda one: (-len(one), one))
        yield group, tuple(words)
