;;; faces.el --- Writes the face of every byte  -*- lexical-binding: t; -*-

;; As groups.vim: the list of the files stands in $MALTWRIGHT_TEXTS; beside each is written
;; NAME.groups, and NAME.indented where there is NAME.tidy.

(set-language-environment "UTF-8")
(setq make-backup-files nil enable-local-variables nil)

(defun faces-of (name)
  "Write the faces of the file NAME."
  (find-file name)
  (unless (eq major-mode 'malt-mode) (error "%s is of %s" name major-mode))
  (font-lock-ensure)
  (let ((rows '()))
    (goto-char (point-min))
    (while (not (eobp))
      (let ((row '()) (end (line-end-position)))
        (while (< (point) end)
          (let* ((face (get-text-property (point) 'face))
                 (face (if (consp face) (car face) face))
                 (bytes (string-bytes (char-to-string (char-after)))))
            (dotimes (_ bytes) (push (if face (symbol-name face) "-") row)))
          (forward-char))
        (push (mapconcat #'identity (nreverse row) " ") rows)
        (forward-line 1)))
    (let ((coding-system-for-write 'utf-8-unix))
      (write-region (concat (mapconcat #'identity (nreverse rows) "\n") "\n") nil (concat name ".groups") nil 0))))

(defun indent-of (name)
  "Indent the file NAME anew."
  (goto-char (point-min))
  (while (re-search-forward "^ +" nil t) (replace-match ""))
  (indent-region (point-min) (point-max))
  (let ((coding-system-for-write 'utf-8-unix))
    (write-region nil nil (concat name ".indented") nil 0)))

(let ((names (with-temp-buffer (insert-file-contents (getenv "MALTWRIGHT_TEXTS")) (split-string (buffer-string) "\n" t)))
      (inhibit-message t))
  (dolist (name names)
    (faces-of name)
    (when (file-exists-p (concat name ".tidy")) (indent-of name))
    (set-buffer-modified-p nil)
    (kill-buffer)))
