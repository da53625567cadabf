;;; trim-mode.el --- Colours for trim job files  -*- lexical-binding: t -*-
;; Made from the language's grammar.  Load it, and files in .trim and .site are coloured.
(defvar trim-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?\# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?- "w" table)
    table))
(defvar trim-mode-keywords
  '(
    ("\\<\\(transition\\|shortened\\|assembly\\|cabinets\\|currency\\|diagonal\\|radiator\\|surveyed\\|casings\\|corners\\|include\\|on-hand\\|opening\\|splices\\|spoiled\\|bought\\|closes\\|filler\\|fitted\\|primer\\|window\\|block\\|boxes\\|caulk\\|every\\|kerfs\\|nails\\|newel\\|paint\\|piece\\|putty\\|round\\|spare\\|stair\\|stock\\|taken\\|bare\\|beam\\|door\\|ends\\|glue\\|head\\|rack\\|room\\|trim\\|unit\\|cut\\|job\\|saw\\|tax\\)\\>" . font-lock-keyword-face)
    ("\\<\\(outside[ \t]+corner\\|inside[ \t]+corner\\|out[ \t]+corner\\|out-corner\\|in[ \t]+corner\\|in-corner\\|outside\\|inside\\|return\\|splice\\|level\\|plumb\\|taper\\|butt\\|open\\|rake\\|out\\|ic\\|in\\|oc\\)\\>" . font-lock-constant-face)
    ("\\<\\(degrees\\|degree\\|inches\\|feet.\\|foot.\\|feet\\|foot\\|inch\\|deg\\|ft.\\|in.\\|cm\\|ft\\|mm\\|m\\)\\>" . font-lock-type-face)
    ("\\<\\(joint[ \t]+costs\\|swings[ \t]+out\\|crosscuts\\|open[ \t]+side\\|open[ \t]+walk\\|swings[ \t]+in\\|two-piece\\|wall[ \t]+side\\|wallboard\\|backband\\|bullnose\\|entrance\\|flexible\\|overhang\\|returned\\|allowed\\|ceiling\\|implied\\|margins\\|nearest\\|nothing\\|one[ \t]+way\\|plinths\\|reaches\\|squares\\|upright\\|bevels\\|blocks\\|bottle\\|bundle\\|casing\\|corner\\|covers\\|curves\\|defect\\|fl.[ \t]+oz\\|gallon\\|height\\|hinged\\|length\\|margin\\|radius\\|reveal\\|rising\\|spring\\|sq.[ \t]+ft\\|square\\|stands\\|sticks\\|within\\|along\\|angle\\|apron\\|backs\\|batch\\|blade\\|check\\|coats\\|doubt\\|faces\\|first\\|fl[ \t]+oz\\|fl.oz\\|floor\\|front\\|girth\\|horns\\|jambs\\|least\\|leave\\|liter\\|litre\\|meter\\|metre\\|miter\\|mitre\\|never\\|notch\\|plate\\|point\\|proud\\|quart\\|reads\\|right\\|sides\\|split\\|sq[ \t]+ft\\|sq.[ \t]+m\\|sq.ft\\|stain\\|stick\\|stool\\|stops\\|studs\\|thick\\|turns\\|under\\|waste\\|bead\\|both\\|coat\\|code\\|cope\\|cuts\\|deep\\|dent\\|down\\|floz\\|four\\|from\\|horn\\|into\\|kerf\\|knot\\|left\\|long\\|most\\|note\\|over\\|pack\\|pick\\|rise\\|sill\\|sq[ \t]+m\\|sq.m\\|sqft\\|stud\\|tall\\|tube\\|wall\\|wane\\|wide\\|all\\|and\\|any\\|box\\|can\\|end\\|gap\\|lap\\|off\\|one\\|per\\|run\\|sqm\\|the\\|top\\|tub\\|as\\|at\\|by\\|no\\|of\\|on\\|to\\|up\\|a\\)\\>" . font-lock-builtin-face)
    ("^[ \t]*\\([[:alnum:]_.-]+\\)[ \t]*:" 1 font-lock-function-name-face)))
;;;###autoload
(define-derived-mode trim-mode prog-mode "Trim"
  (setq-local comment-start "# ")
  (setq-local font-lock-defaults '(trim-mode-keywords nil t)))
;;;###autoload
(add-to-list 'auto-mode-alist '("\\.\\(trim\\|site\\)\\'" . trim-mode))
(provide 'trim-mode)
;;; trim-mode.el ends here
