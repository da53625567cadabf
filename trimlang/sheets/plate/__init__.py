"""Made by ``python -m trimlang.sheets.press``: change templates/."""
