;;; malt-mode.el --- Major mode for process files of maltwright  -*- lexical-binding: t; -*-

;; Keywords: languages
;; Package-Requires: ((emacs "26.1"))

;;; Commentary:

;; Colours, indentation and an index for files that end in .malt, and the language server
;; `maltwright lsp' for eglot.  What a word is hangs on where it stands in its line: it
;; begins a statement, opens a clause, is the unit of a number or stands between two ends
;; of a range.

;;; Code:

(defgroup malt nil
  "Process files of maltwright."
  :group 'languages)

(defcustom malt-indent-offset 2
  "How far a block is set in, in columns."
  :type 'integer
  :safe #'integerp)

;; The words: made from the vocabulary by the tests of cmd/write/highlight; do not edit.

(defconst malt--includes
  '("use")
  "Words: bring in another file.")

(defconst malt--definitions
  '("batch" "floor" "grain" "house" "kiln" "process" "scale" "site" "vessel")
  "Words: give a name to what their block says.")

(defconst malt--acts
  '("accept" "aerate" "air" "allow" "at" "bag" "began" "changed" "cool"
    "counted" "cure" "deculm" "dry" "expect" "felt" "for" "from" "gate"
    "germinate" "hold" "humidity" "kiln" "limits" "make" "pinned" "read"
    "remark" "repeat" "rest" "roast" "sample" "soak" "sprinkle" "steep"
    "stew" "stir" "store" "tare" "tested" "turn" "turned" "until" "weighed"
    "wither")
  "Words: begin a step, a stage, a setting or a line of a record.")

(defconst malt--facts
  '("airflow" "airless-time" "already" "altitude" "area" "awake" "away"
    "bed-temperature" "chimney" "chit" "cooler" "corn-weight" "deculm-wait"
    "delivered" "division" "door" "draught" "drying" "end-moisture" "ergot"
    "fan" "fired" "germination" "growth" "heater" "holds" "husk-water"
    "kernel-weight" "moisture" "mould" "protein" "reaches" "recovers"
    "respiration" "returns" "rise-rate" "soak-time" "species" "steep-water"
    "store-rest" "thermometer" "treated" "tumbles" "turn-gap" "uptake"
    "walls" "water" "weighs" "withering" "withering-time")
  "Words: begin a fact.")

(defconst malt--numbered
  '("changed")
  "Words: begin a statement of a step and its number.")

(defconst malt--steps
  '("cool" "cure" "deculm" "dry" "germinate" "hold" "rest" "roast" "soak"
    "stew" "wither")
  "Words: the steps that can be numbered there.")

(defconst malt--clauses
  '("after" "allow" "as" "at" "batches" "because" "by" "error" "every" "for"
    "from" "in" "of" "on" "over" "scatter" "to" "until" "when" "with"
    "within")
  "Words: open a clause.")

(defconst malt--bounds
  '("at least" "at most" "above" "below" "is")
  "Words: stand in front of a value as its bound.")

(defconst malt--signs
  '("≤" "≥" "<=" "=<" "==" "=>" ">=" "<" "=" ">")
  "Words: signs of a bound.")

(defconst malt--and
  '("and")
  "Words: joins two tests.")

(defconst malt--to
  '("to")
  "Words: stands between two ends of a range.")

(defconst malt--places
  '("acrospire" "air" "air-off" "air-on" "bed" "break" "chit" "final" "malt"
    "moisture" "oven" "room" "rub" "steep-out" "time" "total" "water"
    "weight" "yield")
  "Words: where a temperature is taken, and what a condition names.")

(defconst malt--choices
  '("acid" "airflow" "ajar" "amber" "bag" "barley" "black" "brick" "brown"
    "buckwheat" "caramel" "chalky" "chocolate" "clean" "colour" "cool"
    "crystal" "cure" "deculm" "diastatic" "direct" "distilling" "don"
    "dried" "dry" "electric" "extract" "fan" "found" "friability" "gas"
    "germinate" "glucan" "green" "gritty" "gummy" "hold" "indirect"
    "insulation" "kilned" "lime" "machine" "maize" "metal" "millet" "munich"
    "natural" "ndma" "no" "none" "oats" "oil" "overflow" "pale" "peat"
    "pilsner" "protein" "rest" "returns" "roast" "roasted" "rye" "smoke"
    "smoked" "soak" "solar" "sorghum" "spelt" "spray" "start" "stew" "still"
    "stone" "the" "times" "triticale" "unknown" "vienna" "wheat" "wither"
    "wood" "yes")
  "Words: values that are words.")

(defconst malt--times
  '("midnight" "noon")
  "Words: times of day that are words.")

(defconst malt--months
  '("Jan" "Feb" "Mar" "Apr" "May" "Jun" "Jul" "Aug" "Sep" "Oct" "Nov" "Dec")
  "Words: the first letters of the months.")

(defconst malt--units
  '("inches of water" "inch of water" "square inches" "square meters"
    "square metres" "cubic meters" "cubic metres" "inches water"
    "square meter" "square metre" "% dry basis" "% wet basis" "centimeters"
    "centimetres" "cubic meter" "cubic metre" "hectoliters" "hectolitres"
    "in of water" "milliliters" "millilitres" "millimeters" "millimetres"
    "mm of water" "square feet" "square foot" "square inch" "Centigrade"
    "Fahrenheit" "centigrade" "centimeter" "centimetre" "cubic feet"
    "cubic foot" "degLintner" "fahrenheit" "hectoliter" "hectolitre"
    "inch water" "inches H2O" "kilojoules" "megajoules" "milligrams"
    "milliliter" "millilitre" "millimeter" "millimetre" "short tons"
    "°Lovibond" "cu ft/min" "degrees C" "degrees F" "degrees c" "degrees f"
    "inches wc" "inches wg" "kilograms" "kilojoule" "kilowatts" "long tons"
    "megajoule" "milligram" "short ton" "short-ton" "°Lintner" "ºLintner"
    "Lovibond" "degC/min" "degF/min" "degree C" "degree F" "degree c"
    "degree f" "ft³/min" "kilogram" "kilowatt" "long ton" "long-ton"
    "lovibond" "millibar" "mm water" "per cent" "°C/hour" "°F/hour"
    "Celsius" "Lintner" "celsius" "degrees" "ft3/min" "gal-imp" "grammes"
    "in w.c." "in w.g." "kernels" "lintner" "minutes" "mm w.c." "mm w.g."
    "pascals" "percent" "persons" "seconds" "sq feet" "ton-imp" "°C/min"
    "°F/min" "ºC/min" "ºF/min" "% d.b." "% w.b." "Kelvin" "degC/h"
    "degF/h" "degree" "ft/min" "gal-UK" "gal-US" "gal-uk" "gal-us" "grains"
    "gramme" "in H2O" "inches" "kelvin" "kernel" "liters" "litres" "meters"
    "metres" "minute" "mm H2O" "ounces" "pascal" "people" "person" "pounds"
    "pt-imp" "qt-imp" "second" "ton-us" "tonnes" "µg/kg" "μg/kg" "BTU/h"
    "Btu/h" "C/min" "F/min" "L/min" "btu/h" "cbm/h" "corns" "cu ft" "deg C"
    "deg F" "deg c" "deg f" "grain" "grams" "hands" "hours" "in WC" "in WG"
    "in wc" "in wg" "inH2O" "kilos" "l/min" "liter" "litre" "m^3/h" "m^3/s"
    "meter" "metre" "mg/kg" "mm WC" "mm WG" "mm WS" "mm wc" "mm wg" "mmH2O"
    "m³/h" "m³/s" "ounce" "pound" "pt-UK" "pt-US" "pt-uk" "pt-us" "qt-UK"
    "qt-US" "qt-uk" "qt-us" "sq cm" "sq ft" "sq in" "times" "tonne" "ug/kg"
    "watts" "weeks" "°C/h" "°EBC" "°F/h" "ºC/h" "ºEBC" "ºF/h" "% db"
    "% wb" "L/kg" "cm^2" "cm²" "corn" "cu m" "cuft" "days" "degC" "degF"
    "degL" "feet" "foot" "ft^2" "ft^3" "ft²" "ft³" "gram" "hand" "hour"
    "inWC" "inWG" "in^2" "inch" "in²" "kilo" "l/kg" "m3/h" "m3/s" "mbar"
    "mg/L" "mg/l" "mins" "mmAq" "mmWC" "mmWG" "mmWS" "secs" "sq m" "sqft"
    "sqin" "time" "watt" "week" "° C" "° F" "° c" "° f" "°WK" "º C"
    "º F" "º c" "º f" "ºWK" "C/h" "CFM" "EBC" "F/h" "K/h" "KWH" "KWh"
    "L/h" "L/s" "L/t" "LPM" "PSI" "cfm" "cm2" "day" "deg" "fpm" "ft2" "ft3"
    "hPa" "hrs" "in2" "kPa" "kWh" "kgs" "kwh" "l/h" "l/s" "l/t" "lbs" "lpm"
    "ltr" "m/s" "m^2" "m^3" "min" "m²" "m³" "pct" "psi" "sec" "sqm" "wks"
    "°C" "°F" "°L" "°c" "°f" "ºC" "ºF" "ºL" "KW" "Kg" "MJ" "Pa" "WK"
    "cc" "cm" "ft" "hL" "hl" "hr" "kJ" "kW" "kg" "kj" "kw" "lb" "m2" "m3"
    "mL" "mg" "ml" "mm" "oC" "oF" "oz" "sf" "wk" "°" "º" "%" "C" "F" "H"
    "K" "L" "W" "c" "d" "f" "g" "h" "l" "m" "s" "t" "x")
  "Words: every spelling of a unit, the longer first.")

(defconst malt--either
  '("in")
  "Words: units that open a clause too, where something follows.")

(defconst malt--fractions
  '("¼" "½" "¾" "⅓" "⅔" "⅛" "⅜" "⅝" "⅞")
  "Words: signs that are numbers.")

;; The words end here.

(defface malt-include '((t :inherit font-lock-preprocessor-face)) "A word that brings in a file.")
(defface malt-definition '((t :inherit font-lock-type-face)) "A word that defines a name.")
(defface malt-name '((t :inherit font-lock-function-name-face)) "The name that is defined.")
(defface malt-act '((t :inherit font-lock-keyword-face)) "A step, a stage, a setting or a line of a record.")
(defface malt-fact '((t :inherit font-lock-variable-name-face)) "A fact of the house.")
(defface malt-clause '((t :inherit font-lock-builtin-face)) "A word that opens a clause.")
(defface malt-bound '((t :inherit font-lock-builtin-face)) "A bound: at least.")
(defface malt-range '((t :inherit font-lock-builtin-face)) "What stands between two ends of a range.")
(defface malt-and '((t :inherit font-lock-builtin-face)) "What joins two tests.")
(defface malt-number '((t :inherit font-lock-constant-face)) "A number.")
(defface malt-unit '((t :inherit font-lock-type-face)) "A unit.")
(defface malt-time '((t :inherit font-lock-constant-face)) "A date or a time of day.")
(defface malt-place '((t :inherit font-lock-builtin-face)) "A place or a measure.")
(defface malt-choice '((t :inherit font-lock-constant-face)) "A value that is a word.")
(defface malt-word '((t :inherit default)) "Any other word.")
(defface malt-brace '((t :inherit default)) "A brace or what ends a statement.")
(defface malt-stray '((t :inherit font-lock-warning-face)) "What the language has no use for.")

;;; Patterns

(defconst malt--blank "[ \t\u00a0\u202f\u2009]")

(defun malt--among (words)
  "A pattern that matches one of WORDS, the longest that stands there."
  (concat "\\(?:"
          (mapconcat (lambda (word)
                       (replace-regexp-in-string " " (concat malt--blank "+") (regexp-quote word) t t))
                     words "\\|")
          "\\)"))

(defun malt--whole (words)
  "A pattern that matches one of WORDS, and no part of a longer one."
  (concat "\\_<" (malt--among words) "\\_>"))

(defconst malt--fraction (concat "[" (apply #'concat malt--fractions) "]"))

(defconst malt--number
  (concat "\\(?:[0-9]+\\(?:[.,/][0-9]+\\| +[0-9]+/[0-9]+\\| *" malt--fraction "\\)?\\|\\.[0-9]+\\|" malt--fraction "\\)"))

(defconst malt--value
  (concat "[-−]?\\(?:[0-9]\\|\\.[0-9]\\|" malt--fraction "\\)"))

(defconst malt--follows
  (malt--whole (append malt--and malt--clauses (mapcar (lambda (bound) (car (split-string bound))) malt--bounds))))

(defconst malt--half
  (concat malt--blank "*\\(?:[aApP]\\.?[mM]\\.?\\|" (malt--among malt--times) "\\)"))

(defconst malt--hour "[0-9]\\{1,2\\}\\(?:[.:][0-9][0-9]\\)?")

(defconst malt--clock
  (concat "\\(?:[0-9]\\{1,2\\}\\(?::[0-9]+\\)+\\(?:" malt--half "\\)?\\|" malt--hour malt--half "\\)"))

(defconst malt--month (concat (malt--among malt--months) "[[:alpha:]]*\\.?"))

(defconst malt--date
  (let ((nth "\\(?:st\\|nd\\|rd\\|th\\|\\.\\)?"))
    (concat "\\(?:[0-9]\\{4\\}[-./][0-9]\\{1,2\\}[-./][0-9]\\{1,2\\}\\|[0-9]\\{1,2\\}[-./][0-9]\\{1,2\\}[-./][0-9]\\{4\\}"
            "\\|[0-9]\\{1,2\\}" nth "[ -]*\\(?:of +\\)?" malt--month "[ ,-]*[0-9]\\{4\\}"
            "\\|" malt--month " *[0-9]\\{1,2\\}" nth ",? *[0-9]\\{4\\}\\)")))

(defconst malt--start (concat "\\(?:^\ufeff?\\|[{};]\\)" malt--blank "*"))

(defconst malt--known-unit (malt--among malt--units))
(defconst malt--either-unit (malt--whole malt--either))
(defconst malt--step-number
  (concat (malt--whole malt--numbered) malt--blank "+" (malt--among malt--steps) malt--blank "+"))

;;; Searching

(defun malt--faced (place)
  "The face at PLACE."
  (get-text-property place 'face))

(defun malt--joined (place)
  "Whether a letter, a digit or a point stands right in front of PLACE."
  (let ((before (char-before place)))
    (and before (or (memq (get-char-code-property before 'general-category) '(Lu Ll Lt Lm Lo Nd No))
                    (memq before '(?_ ?. ?,))))))

(defun malt--letter-follows (place)
  "Whether a letter, or a sign of units, stands at PLACE."
  (let ((after (char-after place)))
    (and after (or (memq (get-char-code-property after 'general-category) '(Lu Ll Lt Lm Lo))
                   (memq after '(?_ ?% ?° ?º ?/ ?² ?³ ?^ ?µ))))))

(defun malt--search (pattern limit found)
  "Search for PATTERN up to LIMIT, where nothing is coloured yet.
FOUND is called behind each match, and nil of it says to go on."
  (let (hit)
    (while (and (not hit) (re-search-forward pattern limit t))
      (let ((start (match-beginning 0)) (data (match-data)))
        (if (and (not (malt--faced start)) (funcall found))
            (setq hit t)
          (set-match-data data)
          (goto-char (1+ start)))))
    hit))

(defun malt--match-time (limit)
  "Search for a date or a time of day up to LIMIT."
  (malt--search
   (concat malt--date "\\|" malt--clock)
   limit
   (lambda ()
     (let ((start (match-beginning 0)) (end (match-end 0)))
       (and (or (not (malt--joined start))
                (save-match-data (save-excursion (goto-char (1- start)) (looking-back "[0-9]" (line-beginning-position)))))
            (or (not (malt--letter-follows end))
                (and (eq (char-after end) ?T) (not (eq (char-before end) ?T)))))))))

(defun malt--match-hour (limit)
  "Search up to LIMIT for an hour such as the 7 of 7 to 10 pm."
  (malt--search
   (concat "\\(" malt--hour "\\)\\(?:" malt--blank "+" (malt--among malt--to) malt--blank "+\\|" malt--blank "*[-–—]" malt--blank "*\\)" malt--hour malt--half)
   limit
   (lambda () (and (not (malt--joined (match-beginning 0))) (goto-char (match-end 1))))))

(defun malt--unit-end ()
  "The end of the unit at point, nil where none stands there.
Of a unit that the language does not know it is a cons of that end."
  (save-match-data
    (let ((known (and (looking-at malt--known-unit) (match-end 0))))
      (cond
       ((and known (not (malt--letter-follows known))) known)
       ((looking-at malt--either-unit)
        (let ((end (match-end 0)))
          (save-excursion
            (goto-char end)
            (skip-chars-forward " \t\u00a0\u202f\u2009")
            (and (or (eolp) (looking-at malt--follows) (not (looking-at "[[:alpha:]_\"“„]"))) end))))
       ((looking-at malt--follows) nil)
       ((looking-at "[[:alpha:]%°ºµ][[:alpha:]_%°º/²³^µ-]*") (list (match-end 0)))
       ((and (looking-at "[\"”″'’′]") (memq (get-char-code-property (char-before) 'general-category) '(Nd No))
             (not (malt--letter-follows (1+ (point)))))
        (list (1+ (point))))))))

(defun malt--match-quantity (limit)
  "Search for a number up to LIMIT; 2 is its unit, 3 one that is not known."
  (malt--search
   (concat "\\([-−]?" malt--number "\\)")
   limit
   (lambda ()
     (let* ((start (match-beginning 0)) (end (match-end 0)) unit)
       (when (and (memq (char-after start) '(?- ?−)) (malt--behind-value start)) ; the dash of a range
         (setq start (1+ start)))
       (unless (and (malt--joined start) (not (malt--behind-unit start)))
         (skip-chars-forward " \t\u00a0\u202f\u2009")
         (let ((from (point)))
           (setq unit (and (< from (line-end-position)) (malt--unit-end)))
           (goto-char (cond ((consp unit) (car unit)) (unit) (t end)))
           (set-match-data
            (append (list start (point) start end)
                    (cond ((consp unit) (list nil nil from (car unit)))
                          (unit (list from unit))))))
         t)))))

(defun malt--behind-unit (place)
  "Whether a unit ends at PLACE: the 30 of 1h30min."
  (eq (malt--faced (1- place)) 'malt-unit))

(defun malt--behind-value (place)
  "Whether a value stands in front of PLACE, with blanks between or none."
  (save-excursion
    (goto-char place)
    (skip-chars-backward " \t\u00a0\u202f\u2009")
    (and (not (bolp)) (memq (malt--faced (1- (point))) '(malt-number malt-unit malt-time)))))

(defun malt--match-range (limit)
  "Search up to LIMIT for what stands between two ends of a range."
  (malt--search
   (concat "\\(?:" (malt--whole malt--to) malt--blank "+\\(?:" malt--value "\\|" (malt--whole malt--times) "\\)\\|[-–—]" malt--blank "*" malt--value "\\)")
   limit
   (lambda ()
     (let* ((start (match-beginning 0))
            (end (if (eq (char-after start) ?t) (+ start 2) (1+ start))))
       (when (and (malt--behind-value start)
                  (not (save-match-data
                         (save-excursion
                           (goto-char start)
                           (looking-back (concat malt--step-number "[0-9]+" malt--blank "+") (line-beginning-position))))))
         (goto-char end)
         (set-match-data (list start end))
         t)))))

;;; Colours

(defun malt--beginning (words face)
  "A rule that gives one of WORDS at the beginning of a statement the FACE."
  `(,(concat malt--start "\\(" (malt--among words) "\\)\\_>") 1 ',face))

(defconst malt-font-lock-keywords
  `((,(concat malt--start "\\(" (malt--among malt--definitions) "\\)" malt--blank "*\\([\"“„]\\(?:\\\\.\\|[^\"”“\\\n]\\)*[\"”“]?\\)")
     (1 'malt-definition) (2 'malt-name t))
    ,(malt--beginning malt--includes 'malt-include)
    ,(malt--beginning malt--acts 'malt-act)
    ,(malt--beginning malt--facts 'malt-fact)
    ,(malt--beginning malt--definitions 'malt-act)
    (malt--match-time 0 'malt-time)
    (malt--match-hour 1 'malt-time)
    (,(malt--whole malt--times) 0 'malt-time)
    (malt--match-quantity (1 'malt-number) (2 'malt-unit nil t) (3 'malt-stray nil t))
    (malt--match-range 0 'malt-range)
    (,(malt--among malt--signs) 0 'malt-bound)
    (,(malt--whole malt--bounds) 0 'malt-bound)
    (,(malt--whole malt--clauses) 0 'malt-clause)
    (,(malt--whole malt--and) 0 'malt-and)
    (,(malt--whole malt--places) 0 'malt-place)
    (,(malt--whole malt--choices) 0 'malt-choice)
    ("\\_<[[:alpha:]_]\\(?:\\s_\\|\\sw\\)*\\_>" 0 'malt-word)
    ("[{};]" 0 'malt-brace)
    ("[^[:space:][:alpha:]0-9\u00a0\u202f\u2009\ufeff]+" 0 'malt-stray))
  "What `malt-mode' colours.")

;;; Texts, comments and blocks

(defvar malt-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?\" "." table) ; see `malt--propertize'
    (modify-syntax-entry ?\\ "." table)
    (dolist (char '(?_ ?- ?'))
      (modify-syntax-entry char "_" table))
    (dolist (char '(?% ?/ ?° ?º ?² ?³ ?^ ?& ?* ?+ ?< ?> ?= ?| ?$ ?. ?, ?– ?— ?− ?½ ?⅓ ?⅔ ?¼ ?¾ ?⅛ ?⅜ ?⅝ ?⅞ ?“ ?„ ?”))
      (modify-syntax-entry char "." table))
    table)
  "Syntax of `malt-mode': a hyphen is part of a word.")

(defun malt--propertize (start end)
  "Mark the texts between START and END; one that is not closed ends with its line."
  (goto-char start)
  (while (re-search-forward "\\(#\\)\\|\\([\"“„]\\)\\(?:\\\\.\\|[^\"”“\\\n]\\)*\\([\"”“]\\|\\\\?$\\)" end t)
    (if (match-beginning 1)
        (end-of-line)
      (let ((open (match-beginning 2)) (close (match-beginning 3)))
        (unless (malt--mark-of-length open)
          (put-text-property open (1+ open) 'syntax-table (string-to-syntax "|"))
          (unless (eobp)
            (when (eq (char-after close) ?\\) (setq close (1+ close)))
            (when (< close (point-max))
              (put-text-property close (1+ close) 'syntax-table (string-to-syntax "|")))))
        (when (malt--mark-of-length open) (goto-char (1+ open)))))))

(defun malt--mark-of-length (place)
  "Whether the quote at PLACE is a mark of inches, right behind a digit."
  (and (> place (point-min))
       (memq (get-char-code-property (char-before place) 'general-category) '(Nd No))
       (not (malt--letter-follows (1+ place)))))

(defun malt-indent-line ()
  "Set the line as deep as the blocks that are open in front of it."
  (interactive)
  (let* ((state (save-excursion (syntax-ppss (line-beginning-position))))
         (closing (save-excursion
                    (back-to-indentation)
                    (- (skip-chars-forward "}"))))
         (column (* malt-indent-offset (max 0 (+ (car state) closing)))))
    (if (<= (current-column) (current-indentation))
        (indent-line-to column)
      (save-excursion (indent-line-to column)))))

(defvar malt-imenu-generic-expression
  (mapcar (lambda (word)
            (list (capitalize word) (concat "^" (regexp-quote word) "[ \t]+[\"“„]\\([^\"”“\n]+\\)") 1))
          malt--definitions)
  "What stands in the index of a buffer: the definitions by their names.")

;;;###autoload
(define-derived-mode malt-mode prog-mode "Malt"
  "Major mode for process files of maltwright."
  (setq-local comment-start "# ")
  (setq-local comment-start-skip "#+[ \t]*")
  (setq-local comment-end "")
  (setq-local indent-tabs-mode nil)
  (setq-local indent-line-function #'malt-indent-line)
  (setq-local electric-indent-chars (append "}" electric-indent-chars))
  (setq-local parse-sexp-lookup-properties t)
  (setq-local syntax-propertize-function #'malt--propertize)
  (setq-local imenu-generic-expression malt-imenu-generic-expression)
  (setq-local font-lock-defaults '(malt-font-lock-keywords)))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.malt\\'" . malt-mode))

;;;###autoload
(with-eval-after-load 'eglot
  (defvar eglot-server-programs)
  (add-to-list 'eglot-server-programs '(malt-mode . ("maltwright" "lsp"))))

(provide 'malt-mode)
;;; malt-mode.el ends here
