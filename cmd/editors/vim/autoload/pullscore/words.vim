" Word lists of the Vim syntax. go generate ./lang writes this file.

" Words that are never names.
let pullscore#words#keywords = ['action', 'and', 'arcmin', 'at', 'because', 'begins', 'bit', 'by', 'camera', 'cm', 'cue', 'deep', 'deg', 'df', 'dolly', 'edit', 'end', 'even', 'follow', 'fr', 'from', 'ft', 'hold', 'imperial', 'in', 'inf', 'land', 'landing', 'lasting', 'lasts', 'left', 'lens', 'let', 'm', 'metric', 'mm', 'move', 'moves', 'ms', 'none', 'of', 'on', 'out', 'over', 'pace', 'pause', 'plan', 'puller', 'px', 'quickest', 'rack', 'rate', 'right', 's', 'scene', 'script', 'sharp', 'shot', 'smooth', 'start', 'subject', 'sways', 'tape', 'to', 'turn', 'units', 'until', 'use', 'voice', 'watched', 'wire', 'with', 'wpm', 'zoom']

" Words that mean something at their place alone.
let pullscore#words#soft = ['apart', 'bias', 'boom', 'both', 'breathing', 'clip', 'clips', 'closest', 'crop', 'darkens', 'diagonal', 'diameter', 'diopter', 'down', 'ends', 'engraved', 'farther', 'focal', 'focus', 'gear', 'girth', 'grip', 'hand', 'hard', 'iso', 'keeps', 'limit', 'linear', 'loses', 'mark', 'marked', 'marks', 'measured', 'meter', 'monitor', 'nd', 'nearer', 'note', 'operator', 'pan', 'planes', 'play', 'pull', 'pupil', 'push', 'ratio', 'rear', 'records', 'reel', 'ring', 'screen', 'sensor', 'shoots', 'shoulder', 'shutter', 'slip', 'spread', 'squeeze', 'stop', 'stops', 'take', 'takes', 'through', 'tilt', 'track', 'travel', 'tripod', 'tube', 'turns', 'type', 'unscripted', 'up', 'ways', 'wheel', 'within', 'x']

" Units.
let pullscore#words#units = ['arcmin', 'bit', 'cm', 'deg', 'fr', 'ft', 'in', 'm', 'mm', 'ms', 'px', 's', 'turn', 'wpm']

" Words that begin statements, and are names before : ( and moves.
let pullscore#words#soft_statements = ['bias', 'boom', 'breathing', 'clip', 'clips', 'closest', 'darkens', 'ends', 'focal', 'grip', 'hand', 'iso', 'keeps', 'limit', 'loses', 'mark', 'marks', 'monitor', 'note', 'pan', 'planes', 'play', 'pull', 'pupil', 'push', 'ratio', 'records', 'ring', 'sensor', 'shoots', 'shutter', 'spread', 'squeeze', 'stops', 'takes', 'tilt', 'track', 'turns']

" Words that begin statements, each group with the soft words inside of them.
let pullscore#words#inside = [
      \ [['action', 'begins', 'camera', 'cue', 'follow', 'hold', 'land', 'lasts', 'lens', 'let', 'move', 'pace', 'pause', 'plan', 'puller', 'quickest', 'rate', 'script', 'sharp', 'start', 'subject', 'units', 'use', 'voice', 'bias', 'breathing', 'clips', 'closest', 'darkens', 'focal', 'grip', 'hand', 'iso', 'limit', 'note', 'pupil', 'ratio', 'records', 'shoots', 'shutter', 'spread', 'stops', 'takes', 'turns'], []],
      \ [['dolly', 'rack', 'zoom', 'pull', 'push', 'track'], ['boom', 'pan', 'tilt', 'track']],
      \ [['edit'], ['unscripted']],
      \ [['on'], ['hand', 'shoulder', 'tripod']],
      \ [['tape'], ['sensor']],
      \ [['watched'], ['diagonal', 'screen']],
      \ [['with'], ['diopter', 'focal', 'gear', 'meter', 'nd', 'operator', 'shoots', 'stop', 'travel', 'tube', 'wheel']],
      \ [['boom', 'pan', 'tilt'], ['boom', 'down', 'pan', 'tilt', 'track', 'up']],
      \ [['clip'], ['reel', 'take']],
      \ [['ends'], ['hard', 'slip']],
      \ [['keeps', 'loses'], ['focus', 'through']],
      \ [['mark'], ['closest']],
      \ [['marks'], ['engraved', 'measured', 'within']],
      \ [['monitor'], ['diagonal']],
      \ [['planes'], ['apart']],
      \ [['play'], ['both', 'closest', 'marked', 'ways']],
      \ [['ring'], ['diameter', 'girth', 'linear']],
      \ [['sensor'], ['crop', 'type', 'x']],
      \ [['squeeze'], ['rear']],
      \ ]

" Soft words of NAME moves.
let pullscore#words#moves = ['farther', 'nearer']

" Words that a name can follow, each group with the soft words that can follow too
" and mean something there.
let pullscore#words#before_names = [
      \ [['action', 'bias', 'breathing', 'camera', 'crop', 'cue', 'darkens', 'deep', 'diameter', 'diopter', 'dolly', 'down', 'focal', 'follow', 'gear', 'girth', 'grip', 'hand', 'hold', 'iso', 'land', 'lasting', 'lasts', 'left', 'lens', 'let', 'limit', 'meter', 'monitor', 'move', 'moves', 'nd', 'of', 'operator', 'out', 'over', 'pace', 'pause', 'planes', 'play', 'puller', 'pupil', 'quickest', 'rack', 'ratio', 'records', 'right', 'sensor', 'shoots', 'shutter', 'spread', 'squeeze', 'stop', 'stops', 'subject', 'sways', 'travel', 'tube', 'until', 'up', 'voice', 'wheel', 'within', 'x', 'zoom'], []],
      \ [['and'], ['tilt']],
      \ [['at'], ['rear']],
      \ [['closest'], ['marked']],
      \ [['from'], ['sensor']],
      \ [['in'], ['type']],
      \ [['mark', 'to'], ['closest']],
      \ [['on'], ['hand', 'shoulder', 'tripod']],
      \ [['ring'], ['diameter', 'girth', 'linear']],
      \ [['with'], ['boom', 'diopter', 'focal', 'gear', 'meter', 'nd', 'operator', 'pan', 'shoots', 'stop', 'tilt', 'track', 'travel', 'tube', 'wheel']],
      \ ]
