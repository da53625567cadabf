"""Made by ``python -m trimlang.sheets.render.template_filling``: change templates/."""
