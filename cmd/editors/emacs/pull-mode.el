;;; pull-mode.el --- Plans and kits of Pullscore  -*- lexical-binding: t -*-

;; Put this folder on the load path:
;;
;;   (add-to-list 'load-path "/path/to/pullscore/cmd/editors/emacs")
;;   (require 'pull-mode)
;;   (add-hook 'pull-mode-hook #'eglot-ensure) ; findings and help while you write
;;
;; Eglot is part of Emacs 29; before that it is a package.  Without it, M-x compile
;; checks the plan and lists its findings.

;;; Code:

(require 'pull-words)

(defconst pull-mode-font-lock
  `((,(concat "^[ \t]*\\(" (regexp-opt pull-words-statements) "\\)\\_>") 1 font-lock-keyword-face)
    (,(concat "^[ \t]*\\(" (regexp-opt pull-words-soft-statements) "\\)\\_>[ \t]*\\(?:[^:( \t\n]\\|$\\)") 1 font-lock-keyword-face)
    (,(regexp-opt pull-words-keywords 'symbols) . font-lock-keyword-face)
    ("^[ \t]*\\(\\S-+\\)[ \t]+moves\\_>" 1 'default t)
    ("\\_<\\(?:f/\\|T\\)?[0-9]+\\(?:[.,:;/][0-9]+\\)*" . font-lock-constant-face))
  "What is coloured besides comments and texts.")

(defvar pull-mode-syntax-table
  (let ((table (make-syntax-table)))
    (modify-syntax-entry ?# "<" table)
    (modify-syntax-entry ?\n ">" table)
    (modify-syntax-entry ?- "_" table)
    (modify-syntax-entry ?_ "_" table)
    (modify-syntax-entry ?. "_" table)
    (modify-syntax-entry ?' "_" table)
    table)
  "Syntax of plans.")

;;;###autoload
(define-derived-mode pull-mode prog-mode "Pull"
  "Major mode for plans and kits of Pullscore."
  (setq-local comment-start "# "
              comment-start-skip "#+[ \t]*"
              indent-tabs-mode nil
              tab-width 2
              indent-line-function #'indent-relative
              font-lock-defaults '(pull-mode-font-lock))
  (when buffer-file-name
    (setq-local compile-command (concat "pullscore check " (shell-quote-argument (file-name-nondirectory buffer-file-name))))))

;;;###autoload
(add-to-list 'auto-mode-alist '("\\.pull\\'" . pull-mode))

(defvar eglot-server-programs)
(with-eval-after-load 'eglot
  (add-to-list 'eglot-server-programs '(pull-mode . ("pullscore" "lsp"))))

(provide 'pull-mode)
;;; pull-mode.el ends here
