" Word lists of the Vim syntax. go generate ./lang writes this file.

" Words that are never names.
let pullscore#words#keywords = ['action', 'and', 'arcmin', 'at', 'because', 'begins', 'bit', 'by', 'camera', 'cm', 'cue', 'deep', 'deg', 'df', 'dolly', 'edit', 'end', 'even', 'follow', 'fr', 'from', 'ft', 'hold', 'imperial', 'in', 'inf', 'land', 'landing', 'lasting', 'lasts', 'left', 'lens', 'let', 'm', 'metric', 'mm', 'move', 'moves', 'ms', 'none', 'of', 'on', 'out', 'over', 'pace', 'pause', 'plan', 'puller', 'px', 'quickest', 'rack', 'rate', 'right', 's', 'scene', 'script', 'sharp', 'shot', 'smooth', 'start', 'subject', 'sways', 'tape', 'to', 'turn', 'units', 'until', 'use', 'voice', 'watched', 'wire', 'with', 'wpm', 'zoom']

" Words that mean something at their place alone.
let pullscore#words#soft = ['aims', 'all', 'apart', 'as', 'bias', 'boom', 'both', 'breathing', 'clip', 'clips', 'closest', 'covers', 'crop', 'cut', 'darkens', 'diagonal', 'diameter', 'diopter', 'down', 'downstage', 'ends', 'engraved', 'eyes', 'farther', 'focal', 'focus', 'gear', 'girth', 'grip', 'hand', 'hard', 'high', 'iso', 'keeps', 'limit', 'line', 'linear', 'loses', 'mark', 'marked', 'marks', 'matches', 'measured', 'meter', 'monitor', 'nd', 'nearer', 'note', 'off', 'operator', 'origin', 'pan', 'places', 'planes', 'play', 'pull', 'pupil', 'push', 'ratio', 'rear', 'records', 'reel', 'ring', 'runs', 'screen', 'sensor', 'shoots', 'shoulder', 'shutter', 'slip', 'spread', 'squeeze', 'stop', 'stops', 'take', 'takes', 'through', 'tilt', 'towards', 'track', 'travel', 'tripod', 'tube', 'turns', 'type', 'unscripted', 'up', 'upstage', 'ways', 'wheel', 'within', 'x']

" Units.
let pullscore#words#units = ['arcmin', 'bit', 'cm', 'deg', 'fr', 'ft', 'in', 'm', 'mm', 'ms', 'px', 's', 'turn', 'wpm']

" Words that begin statements, and are names before : ( and moves.
let pullscore#words#soft_statements = ['bias', 'boom', 'breathing', 'clip', 'clips', 'closest', 'covers', 'crop', 'cut', 'darkens', 'ends', 'focal', 'grip', 'hand', 'iso', 'keeps', 'limit', 'line', 'loses', 'mark', 'marks', 'matches', 'measured', 'monitor', 'note', 'origin', 'pan', 'places', 'planes', 'play', 'pull', 'pupil', 'push', 'ratio', 'records', 'ring', 'runs', 'sensor', 'shoots', 'shutter', 'spread', 'squeeze', 'stops', 'takes', 'tilt', 'track', 'turns']

" Words that begin statements, each group with the soft words inside of them.
let pullscore#words#inside = [
      \ [['action', 'begins', 'cue', 'follow', 'hold', 'land', 'lasts', 'lens', 'let', 'move', 'pace', 'pause', 'plan', 'puller', 'quickest', 'rate', 'scene', 'script', 'sharp', 'start', 'units', 'use', 'voice', 'bias', 'breathing', 'clips', 'closest', 'crop', 'cut', 'darkens', 'focal', 'grip', 'hand', 'iso', 'limit', 'line', 'matches', 'measured', 'note', 'origin', 'pupil', 'ratio', 'records', 'runs', 'shoots', 'shutter', 'spread', 'stops', 'takes', 'turns'], []],
      \ [['camera'], ['aims', 'as', 'boom', 'down', 'downstage', 'high', 'pan', 'tilt', 'towards', 'track', 'up', 'upstage']],
      \ [['dolly', 'rack', 'zoom', 'pull', 'push', 'track'], ['boom', 'pan', 'tilt', 'track']],
      \ [['edit'], ['unscripted']],
      \ [['on'], ['hand', 'shoulder', 'tripod']],
      \ [['subject'], ['down', 'downstage', 'eyes', 'high', 'towards', 'up', 'upstage']],
      \ [['tape'], ['sensor']],
      \ [['watched'], ['diagonal', 'screen']],
      \ [['with'], ['diopter', 'focal', 'gear', 'meter', 'nd', 'operator', 'shoots', 'stop', 'travel', 'tube', 'wheel']],
      \ [['boom', 'pan', 'tilt'], ['boom', 'down', 'pan', 'tilt', 'track', 'up']],
      \ [['clip'], ['reel', 'take']],
      \ [['covers'], ['all']],
      \ [['ends'], ['hard', 'slip']],
      \ [['keeps', 'loses'], ['focus', 'through']],
      \ [['mark'], ['closest', 'down', 'downstage', 'high', 'towards', 'up', 'upstage']],
      \ [['marks'], ['engraved', 'measured', 'within']],
      \ [['monitor'], ['diagonal']],
      \ [['places'], ['as']],
      \ [['planes'], ['apart']],
      \ [['play'], ['both', 'closest', 'marked', 'ways']],
      \ [['ring'], ['diameter', 'girth', 'linear']],
      \ [['sensor'], ['crop', 'type', 'x']],
      \ [['squeeze'], ['rear']],
      \ ]

" Soft words of NAME moves.
let pullscore#words#moves = ['down', 'downstage', 'eyes', 'farther', 'high', 'nearer', 'towards', 'up', 'upstage']

" Words that a name can follow, each group with the soft words that can follow too
" and mean something there.
let pullscore#words#before_names = [
      \ [['action', 'dolly', 'moves', 'rack', 'zoom'], ['eyes', 'off']],
      \ [['and'], ['tilt']],
      \ [['at'], ['rear']],
      \ [['bias', 'breathing', 'crop', 'cue', 'darkens', 'deep', 'diameter', 'diopter', 'eyes', 'focal', 'follow', 'gear', 'girth', 'grip', 'hand', 'hold', 'iso', 'land', 'lasting', 'lasts', 'lens', 'let', 'limit', 'line', 'matches', 'meter', 'monitor', 'move', 'nd', 'of', 'operator', 'out', 'over', 'pace', 'pause', 'planes', 'play', 'puller', 'pupil', 'quickest', 'ratio', 'records', 'sensor', 'shoots', 'shutter', 'spread', 'squeeze', 'stop', 'stops', 'subject', 'sways', 'towards', 'travel', 'tube', 'until', 'voice', 'wheel', 'within', 'x'], []],
      \ [['camera'], ['as']],
      \ [['closest'], ['marked']],
      \ [['covers'], ['all']],
      \ [['down', 'downstage', 'high', 'left', 'right', 'up', 'upstage'], ['aims', 'eyes']],
      \ [['from'], ['sensor']],
      \ [['in'], ['type']],
      \ [['mark', 'to'], ['closest']],
      \ [['measured'], ['within']],
      \ [['on'], ['hand', 'shoulder', 'tripod']],
      \ [['ring'], ['diameter', 'girth', 'linear']],
      \ [['with'], ['boom', 'diopter', 'focal', 'gear', 'meter', 'nd', 'operator', 'pan', 'shoots', 'stop', 'tilt', 'track', 'travel', 'tube', 'wheel']],
      \ ]
