;;; pull-words.el --- Word lists of pull-mode  -*- lexical-binding: t -*-

;; go generate ./lang writes this file.

;;; Code:

(defconst pull-words-keywords
  '("action" "and" "arcmin" "at" "because" "begins" "bit" "by" "camera" "cm" "cue" "deep" "deg" "df" "dolly" "edit" "end" "even" "follow" "fr" "from" "ft" "hold" "imperial" "in" "inf" "land" "landing" "lasting" "lasts" "left" "lens" "let" "m" "metric" "mm" "move" "moves" "ms" "none" "of" "on" "out" "over" "pace" "pause" "plan" "puller" "px" "quickest" "rack" "rate" "right" "s" "scene" "script" "sharp" "shot" "smooth" "start" "subject" "sways" "tape" "to" "turn" "units" "until" "use" "voice" "watched" "wire" "with" "wpm" "zoom")
  "Words that are never names.")

(defconst pull-words-statements
  '("action" "begins" "camera" "cue" "dolly" "edit" "follow" "hold" "land" "lasts" "lens" "let" "move" "on" "pace" "pause" "plan" "puller" "quickest" "rack" "rate" "scene" "script" "sharp" "start" "subject" "tape" "units" "use" "voice" "watched" "with" "zoom")
  "Words that begin statements, and are never names.")

(defconst pull-words-soft-statements
  '("bias" "boom" "breathing" "clip" "clips" "closest" "covers" "crop" "cut" "darkens" "ends" "focal" "grip" "hand" "iso" "keeps" "limit" "line" "loses" "mark" "marks" "matches" "measured" "monitor" "note" "origin" "pan" "places" "planes" "play" "pull" "pupil" "push" "ratio" "records" "ring" "runs" "sensor" "shoots" "shutter" "spread" "squeeze" "stops" "takes" "tilt" "track" "turns")
  "Words that begin statements, and are names before some signs.")

(provide 'pull-words)
;;; pull-words.el ends here
