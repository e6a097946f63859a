" Vim syntax file: process files of maltwright (*.malt).

if exists('b:current_syntax')
  finish
endif
scriptencoding utf-8
let s:cpo_save = &cpo
set cpo&vim

" The words: made from the vocabulary by the tests of cmd/write/highlight; do not edit.
" bring in another file
let s:includes = ['use']
" give a name to what their block says
let s:definitions = ['batch', 'floor', 'grain', 'house', 'kiln', 'process', 'scale', 'site',
  \ 'vessel']
" begin a step, a stage, a setting or a line of a record
let s:acts = ['accept', 'aerate', 'air', 'allow', 'at', 'bag', 'began', 'changed',
  \ 'cool', 'counted', 'cure', 'deculm', 'dry', 'expect', 'felt', 'for',
  \ 'from', 'gate', 'germinate', 'hold', 'humidity', 'kiln', 'limits',
  \ 'make', 'pinned', 'read', 'remark', 'repeat', 'rest', 'roast', 'sample',
  \ 'soak', 'sprinkle', 'steep', 'stew', 'stir', 'store', 'tare', 'tested',
  \ 'turn', 'turned', 'until', 'weighed', 'wither']
" begin a fact
let s:facts = ['airflow', 'airless-time', 'already', 'altitude', 'area', 'awake',
  \ 'away', 'bed-temperature', 'chimney', 'chit', 'cooler', 'corn-weight',
  \ 'deculm-wait', 'delivered', 'division', 'door', 'draught', 'drying',
  \ 'end-moisture', 'ergot', 'fan', 'fired', 'germination', 'growth',
  \ 'heater', 'holds', 'husk-water', 'kernel-weight', 'moisture', 'mould',
  \ 'protein', 'reaches', 'recovers', 'respiration', 'returns', 'rise-rate',
  \ 'soak-time', 'species', 'steep-water', 'store-rest', 'thermometer',
  \ 'treated', 'tumbles', 'turn-gap', 'uptake', 'walls', 'water', 'weighs',
  \ 'withering', 'withering-time']
" begin a statement of a step and its number
let s:numbered = ['changed']
" the steps that can be numbered there
let s:steps = ['cool', 'cure', 'deculm', 'dry', 'germinate', 'hold', 'rest', 'roast',
  \ 'soak', 'stew', 'wither']
" open a clause
let s:clauses = ['after', 'allow', 'as', 'at', 'batches', 'because', 'by', 'error',
  \ 'every', 'for', 'from', 'in', 'of', 'on', 'over', 'scatter', 'to',
  \ 'until', 'when', 'with', 'within']
" stand in front of a value as its bound
let s:bounds = ['at least', 'at most', 'above', 'below', 'is']
" signs of a bound
let s:signs = ['≤', '≥', '<=', '=<', '==', '=>', '>=', '<', '=', '>']
" joins two tests
let s:and = ['and']
" stands between two ends of a range
let s:to = ['to']
" where a temperature is taken, and what a condition names
let s:places = ['acrospire', 'air', 'air-off', 'air-on', 'bed', 'break', 'chit', 'final',
  \ 'malt', 'moisture', 'oven', 'room', 'rub', 'steep-out', 'time', 'total',
  \ 'water', 'weight', 'yield']
" values that are words
let s:choices = ['acid', 'airflow', 'ajar', 'amber', 'bag', 'barley', 'black', 'brick',
  \ 'brown', 'buckwheat', 'caramel', 'chalky', 'chocolate', 'clean',
  \ 'colour', 'cool', 'crystal', 'cure', 'deculm', 'diastatic', 'direct',
  \ 'distilling', 'don', 'dried', 'dry', 'electric', 'extract', 'fan',
  \ 'found', 'friability', 'gas', 'germinate', 'glucan', 'green', 'gritty',
  \ 'gummy', 'hold', 'indirect', 'insulation', 'kilned', 'lime', 'machine',
  \ 'maize', 'metal', 'millet', 'munich', 'natural', 'ndma', 'no', 'none',
  \ 'oats', 'oil', 'overflow', 'pale', 'peat', 'pilsner', 'protein', 'rest',
  \ 'returns', 'roast', 'roasted', 'rye', 'smoke', 'smoked', 'soak', 'solar',
  \ 'sorghum', 'spelt', 'spray', 'start', 'stew', 'still', 'stone', 'the',
  \ 'times', 'triticale', 'unknown', 'vienna', 'wheat', 'wither', 'wood',
  \ 'yes']
" times of day that are words
let s:times = ['midnight', 'noon']
" the first letters of the months
let s:months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct',
  \ 'Nov', 'Dec']
" every spelling of a unit, the longer first
let s:units = ['inches of water', 'inch of water', 'square inches', 'square meters',
  \ 'square metres', 'cubic meters', 'cubic metres', 'inches water',
  \ 'square meter', 'square metre', '% dry basis', '% wet basis',
  \ 'centimeters', 'centimetres', 'cubic meter', 'cubic metre',
  \ 'hectoliters', 'hectolitres', 'in of water', 'milliliters',
  \ 'millilitres', 'millimeters', 'millimetres', 'mm of water',
  \ 'square feet', 'square foot', 'square inch', 'Centigrade', 'Fahrenheit',
  \ 'centigrade', 'centimeter', 'centimetre', 'cubic feet', 'cubic foot',
  \ 'degLintner', 'fahrenheit', 'hectoliter', 'hectolitre', 'inch water',
  \ 'inches H2O', 'kilojoules', 'megajoules', 'milligrams', 'milliliter',
  \ 'millilitre', 'millimeter', 'millimetre', 'short tons', '°Lovibond',
  \ 'cu ft/min', 'degrees C', 'degrees F', 'degrees c', 'degrees f',
  \ 'inches wc', 'inches wg', 'kilograms', 'kilojoule', 'kilowatts',
  \ 'long tons', 'megajoule', 'milligram', 'short ton', 'short-ton',
  \ '°Lintner', 'ºLintner', 'Lovibond', 'degC/min', 'degF/min', 'degree C',
  \ 'degree F', 'degree c', 'degree f', 'ft³/min', 'kilogram', 'kilowatt',
  \ 'long ton', 'long-ton', 'lovibond', 'millibar', 'mm water', 'per cent',
  \ '°C/hour', '°F/hour', 'Celsius', 'Lintner', 'celsius', 'degrees',
  \ 'ft3/min', 'gal-imp', 'grammes', 'in w.c.', 'in w.g.', 'kernels',
  \ 'lintner', 'minutes', 'mm w.c.', 'mm w.g.', 'pascals', 'percent',
  \ 'persons', 'seconds', 'sq feet', 'ton-imp', '°C/min', '°F/min',
  \ 'ºC/min', 'ºF/min', '% d.b.', '% w.b.', 'Kelvin', 'degC/h', 'degF/h',
  \ 'degree', 'ft/min', 'gal-UK', 'gal-US', 'gal-uk', 'gal-us', 'grains',
  \ 'gramme', 'in H2O', 'inches', 'kelvin', 'kernel', 'liters', 'litres',
  \ 'meters', 'metres', 'minute', 'mm H2O', 'ounces', 'pascal', 'people',
  \ 'person', 'pounds', 'pt-imp', 'qt-imp', 'second', 'ton-us', 'tonnes',
  \ 'µg/kg', 'μg/kg', 'BTU/h', 'Btu/h', 'C/min', 'F/min', 'L/min', 'btu/h',
  \ 'cbm/h', 'corns', 'cu ft', 'deg C', 'deg F', 'deg c', 'deg f', 'grain',
  \ 'grams', 'hands', 'hours', 'in WC', 'in WG', 'in wc', 'in wg', 'inH2O',
  \ 'kilos', 'l/min', 'liter', 'litre', 'm^3/h', 'm^3/s', 'meter', 'metre',
  \ 'mg/kg', 'mm WC', 'mm WG', 'mm WS', 'mm wc', 'mm wg', 'mmH2O', 'm³/h',
  \ 'm³/s', 'ounce', 'pound', 'pt-UK', 'pt-US', 'pt-uk', 'pt-us', 'qt-UK',
  \ 'qt-US', 'qt-uk', 'qt-us', 'sq cm', 'sq ft', 'sq in', 'times', 'tonne',
  \ 'ug/kg', 'watts', 'weeks', '°C/h', '°EBC', '°F/h', 'ºC/h', 'ºEBC',
  \ 'ºF/h', '% db', '% wb', 'L/kg', 'cm^2', 'cm²', 'corn', 'cu m', 'cuft',
  \ 'days', 'degC', 'degF', 'degL', 'feet', 'foot', 'ft^2', 'ft^3', 'ft²',
  \ 'ft³', 'gram', 'hand', 'hour', 'inWC', 'inWG', 'in^2', 'inch', 'in²',
  \ 'kilo', 'l/kg', 'm3/h', 'm3/s', 'mbar', 'mg/L', 'mg/l', 'mins', 'mmAq',
  \ 'mmWC', 'mmWG', 'mmWS', 'secs', 'sq m', 'sqft', 'sqin', 'time', 'watt',
  \ 'week', '° C', '° F', '° c', '° f', '°WK', 'º C', 'º F', 'º c',
  \ 'º f', 'ºWK', 'C/h', 'CFM', 'EBC', 'F/h', 'K/h', 'KWH', 'KWh', 'L/h',
  \ 'L/s', 'L/t', 'LPM', 'PSI', 'cfm', 'cm2', 'day', 'deg', 'fpm', 'ft2',
  \ 'ft3', 'hPa', 'hrs', 'in2', 'kPa', 'kWh', 'kgs', 'kwh', 'l/h', 'l/s',
  \ 'l/t', 'lbs', 'lpm', 'ltr', 'm/s', 'm^2', 'm^3', 'min', 'm²', 'm³',
  \ 'pct', 'psi', 'sec', 'sqm', 'wks', '°C', '°F', '°L', '°c', '°f',
  \ 'ºC', 'ºF', 'ºL', 'KW', 'Kg', 'MJ', 'Pa', 'WK', 'cc', 'cm', 'ft',
  \ 'hL', 'hl', 'hr', 'kJ', 'kW', 'kg', 'kj', 'kw', 'lb', 'm2', 'm3', 'mL',
  \ 'mg', 'ml', 'mm', 'oC', 'oF', 'oz', 'sf', 'wk', '°', 'º', '%', 'C',
  \ 'F', 'H', 'K', 'L', 'W', 'c', 'd', 'f', 'g', 'h', 'l', 'm', 's', 't',
  \ 'x']
" units that open a clause too, where something follows
let s:either = ['in']
" signs that are numbers
let s:fractions = ['¼', '½', '¾', '⅓', '⅔', '⅛', '⅜', '⅝', '⅞']
" The words end here.

" Patterns that match one of a list; s:Whole takes no part of a longer word.
function! s:Among(list) abort
  return '\%(' . join(map(copy(a:list), {_, word -> substitute(escape(word, '\/.*$^~[]'), ' ', '\\s\\+', 'g')}), '\|') . '\)'
endfunction

function! s:Whole(list) abort
  return '\k\@1<!' . s:Among(a:list) . '\k\@!'
endfunction

function! s:Match(group, pattern, ...) abort
  execute 'syntax match' a:group '/' . a:pattern . '/' join(a:000)
endfunction

syntax case match
syntax iskeyword @,48-57,_,-,',192-255
syntax spell notoplevel

let s:start = '\%(^\%ufeff\=\s*\|[{};]\s*\)\@80<='
let s:fraction = '[' . join(s:fractions, '') . ']'
let s:number = '\%(\d\+\%([.,/]\d\+\| \+\d\+\/\d\+\| *' . s:fraction . '\)\=\|\%(\k\|\.\)\@1<!\.\d\+\|' . s:fraction . '\)'
let s:value = '[-−]\=\%(\d\|\.\d\|' . s:fraction . '\)'
let s:follows = s:Among(s:and + s:clauses + map(copy(s:bounds), {_, words -> split(words)[0]}))
let s:half = '\s*\%([aApP]\.\=[mM]\.\=\|' . s:Among(s:times) . '\)\a\@!'
let s:hour = '\d\{1,2}\%([.:]\d\d\)\='
let s:month = s:Among(s:months) . '\a*\.\='
let s:unitsign = '[%°º/²³^µ]'

" Of two that match at a place the last one holds, so that what is most certain stands below.
syntax match maltStray /\S/
call s:Match('maltWord', '\k\@1<!\d\@!\k\+')
call s:Match('maltChoice', s:Whole(s:choices))
call s:Match('maltPlace', s:Whole(s:places))
call s:Match('maltAnd', s:Whole(s:and))
call s:Match('maltClause', s:Whole(s:clauses))
call s:Match('maltBound', s:Among(s:signs))
call s:Match('maltBound', s:Whole(s:bounds))
syntax match maltEnd /;/

call s:Match('maltNumber', '\k\@1<![-−]\=' . s:number, 'nextgroup=maltMark,maltUnit,maltUnknownUnit,maltRange skipwhite')
call s:Match('maltUnknownUnit', '\%(\d\|' . s:follows . '\a\@!\)\@!\%(\k\|' . s:unitsign . '\)\+', 'contained nextgroup=maltPart,maltRange skipwhite')
call s:Match('maltUnit', s:Among(s:either) . '\k\@!\ze\s*\%($\|[^[:alpha:]_"“„[:blank:]]\|' . s:follows . '\k\@!\)', 'contained nextgroup=maltPart,maltRange skipwhite')
call s:Match('maltUnit', s:Among(s:units) . '\%(\a\|_\|' . s:unitsign . '\)\@!', 'contained nextgroup=maltPart,maltRange skipwhite')
call s:Match('maltMark', '\d\@1<=["”″''’′]\a\@!', 'contained')
" a further number of the same quantity, as in 1 h 30 min
call s:Match('maltPart', s:number, 'contained nextgroup=maltUnit,maltUnknownUnit,maltRange skipwhite')

call s:Match('maltTime', s:Whole(s:times), 'nextgroup=maltRange skipwhite')
call s:Match('maltTime', '\%(\k\|[.,]\)\@1<!' . s:hour . s:half, 'nextgroup=maltRange skipwhite')
call s:Match('maltTime', '\%(\k\|[.,]\)\@1<!' . s:hour . '\ze\s*\%([-–—]\|' . s:Whole(s:to) . '\)\s*' . s:hour . s:half, 'nextgroup=maltRange skipwhite')
call s:Match('maltTime', '\%(\%(\k\|[.,]\)\@1<!\|\%(\dT\)\@2<=\)\d\{1,2}\%(:\d\+\)\+\%(' . s:half . '\)\=', 'nextgroup=maltRange skipwhite')
for s:date in ['\d\{4}[-./]\d\{1,2}[-./]\d\{1,2}', '\d\{1,2}[-./]\d\{1,2}[-./]\d\{4}',
      \ '\d\{1,2}\%(st\|nd\|rd\|th\|\.\)\=[ -]*\%(of \+\)\=' . s:month . '[ ,-]*\d\{4}',
      \ s:month . ' *\d\{1,2}\%(st\|nd\|rd\|th\|\.\)\=,\= *\d\{4}']
  call s:Match('maltTime', '\c\%(\k\|[.,]\)\@1<!' . s:date . '\%(\d\)\@!', 'nextgroup=maltTimeMark,maltRange skipwhite')
endfor
syntax match maltTimeMark /T\ze\d/ contained
call s:Match('maltRange', s:Whole(s:to) . '\ze\s\+\%(' . s:value . '\|' . s:Whole(s:times) . '\)', 'contained')
call s:Match('maltRange', '[-–—]\ze\s*' . s:value, 'contained')
" the number of a step, behind which a to opens a clause
call s:Match('maltNumber', '\%(' . s:Among(s:numbered) . '\s\+' . s:Among(s:steps) . '\s\+\)\@80<=\d\+\k\@!')

for [s:group, s:list] in [['maltFact', s:facts], ['maltAct', s:acts], ['maltAct', s:definitions], ['maltInclude', s:includes]]
  call s:Match(s:group, s:start . s:Among(s:list) . '\k\@!')
endfor
call s:Match('maltDefinition', s:start . s:Among(s:definitions) . '\ze\s*["“„]', 'nextgroup=maltName skipwhite')

syntax region maltText start=/["“„]/ skip=/\\./ end=/["”“]/ end=/$/ oneline keepend contains=maltEscape,@Spell
syntax region maltName start=/["“„]/ skip=/\\./ end=/["”“]/ end=/$/ oneline keepend contains=maltEscape contained
syntax match maltEscape /\\./ contained
syntax match maltComment /#.*$/ contains=@Spell
syntax region maltBlock matchgroup=maltBrace start=/{/ end=/}/ transparent fold
syntax sync fromstart

highlight default link maltComment Comment
highlight default link maltInclude Include
highlight default link maltDefinition Structure
highlight default link maltAct Statement
highlight default link maltFact Identifier
highlight default link maltClause Keyword
highlight default link maltBound Operator
highlight default link maltAnd Operator
highlight default link maltRange Operator
highlight default link maltNumber Number
highlight default link maltPart Number
highlight default link maltUnit Type
highlight default link maltTime Constant
highlight default link maltTimeMark Constant
highlight default link maltPlace Special
highlight default link maltChoice Constant
highlight default link maltText String
highlight default link maltName Title
highlight default link maltEscape SpecialChar
highlight default link maltBrace Delimiter
highlight default link maltEnd Delimiter
highlight default link maltMark Error
highlight default link maltUnknownUnit Error
highlight default link maltStray Error

let b:current_syntax = 'malt'
let &cpo = s:cpo_save
unlet s:cpo_save
