;;; session.el --- What somebody does in Emacs  -*- lexical-binding: t; -*-

;; With a process that has a slip in it.  The answers go to a file.

(require 'cl-lib)
(require 'json)
(require 'flymake)
(require 'xref)

(defvar answers nil)

(defun answer (name value)
  "Keep VALUE as what was asked under NAME."
  (push (cons name value) answers))

(defmacro wait (what &rest holds)
  "Wait for WHAT until HOLDS."
  `(let ((end (+ (float-time) 60)))
     (while (not (progn ,@holds))
       (when (> (float-time) end) (error "Waited in vain for %s" ,what))
       (accept-process-output nil 0.02))))

(defun line ()
  "The line of point."
  (buffer-substring-no-properties (line-beginning-position) (line-end-position)))

(defun goto-text (text)
  "Go to the first TEXT of the buffer."
  (goto-char (point-min))
  (search-forward text)
  (goto-char (match-beginning 0)))

(defun faulty ()
  "The findings that are errors."
  (cl-remove-if-not (lambda (d) (memq (flymake-diagnostic-type d) '(eglot-error :error))) (flymake-diagnostics)))

(defun press (keys)
  "Do what KEYS do here."
  (call-interactively (or (key-binding (kbd keys)) (error "Nothing on %s" keys))))

(defun hints ()
  "The hints of the buffer, each behind its line."
  (vconcat
   (mapcar
    (lambda (hint)
      (let ((label (plist-get hint :label)))
        (save-excursion
          (goto-char (point-min))
          (forward-line (plist-get (plist-get hint :position) :line))
          (concat (string-trim (line)) " | "
                  (if (stringp label) label (plist-get (aref label 0) :value))))))
    (jsonrpc-request
     (eglot--current-server-or-lose) :textDocument/inlayHint
     (list :textDocument (eglot--TextDocumentIdentifier)
           :range (list :start '(:line 0 :character 0)
                        :end (list :line (line-number-at-pos (point-max)) :character 0)))
     :timeout 60))))

(defun run ()
  "The session."
  (find-file "pale.malt")
  (answer 'filetype (symbol-name major-mode))
  (run-hooks 'post-command-hook) ; eglot-ensure waits for it
  (wait "the server" (eglot-current-server))
  (flymake-start)

  ;; diagnose
  (goto-text "watter")
  (wait "findings" (faulty))
  (answer 'findings (vconcat (mapcar #'flymake-diagnostic-text (flymake-diagnostics))))

  ;; what the echo area begins with
  (let (told)
    (funcall (car eldoc-documentation-functions) (lambda (text &rest _) (setq told text)))
    (answer 'echoed (substring-no-properties told)))

  ;; repair
  (let ((last-nonmenu-event ?a) offered) ; no menu of a mouse
    (cl-letf (((symbol-function 'completing-read)
               (lambda (_prompt collection &rest _)
                 (setq offered (all-completions "" collection))
                 (car offered))))
      (press "C-c a"))
    (answer 'actions (vconcat offered)))
  (wait "the repair" (save-excursion (goto-char (point-min)) (not (search-forward "watter" nil t))))
  (answer 'repaired (line))
  (eglot--signal-textDocument/didChange)
  (wait "no finding" (not (faulty)))

  ;; hints: this client has none, and asks by hand; they are there once the forecast is
  (wait "hints" (> (length (hints)) 0))
  (answer 'hints (hints))

  ;; hover
  (goto-text "cure at")
  (let (told)
    (eglot-hover-eldoc-function (lambda (text &rest _) (setq told text)))
    (wait "the hover" told)
    (answer 'hover (substring-no-properties told)))

  ;; complete
  (goto-text "cure at")
  (end-of-line)
  (insert "\n    co")
  (eglot--signal-textDocument/didChange)
  (let ((table (eglot-completion-at-point)))
    (answer 'offers (vconcat (mapcar #'substring-no-properties (all-completions "co" (nth 2 table))))))
  (delete-region (line-beginning-position) (1+ (line-end-position)))

  ;; layout
  (goto-text "soak 7 h in water")
  (delete-region (line-beginning-position) (line-end-position))
  (insert "soak    7 h in   water at 13 °C")
  (press "C-c f")
  (goto-text "soak 7 h in water")
  (answer 'laid_out (line))

  ;; rename, in this file and in the one that it uses
  (eglot--signal-textDocument/didChange) ; as it does by itself half a second after the last key
  (goto-text "tray kiln")
  (cl-letf (((symbol-function 'y-or-n-p) (lambda (&rest _) t)))
    (eglot-rename "box kiln"))
  (goto-text "box kiln")
  (answer 'renamed (line))
  (eglot--signal-textDocument/didChange)

  ;; definition
  (save-some-buffers t)
  (goto-text "box kiln")
  (press "M-.")
  (answer 'defined (concat (file-name-nondirectory buffer-file-name) ": " (line)))
  (save-some-buffers t)
  (eglot-shutdown (eglot-current-server)))

(setq make-backup-files nil create-lockfiles nil)
(condition-case failed
    (run)
  (error (answer 'failed (format "%S" failed))))
(let ((coding-system-for-write 'utf-8-unix))
  (write-region (json-encode answers) nil (getenv "MALTWRIGHT_ANSWERS")))
