'use strict';
const $ = function (id) { return document.getElementById(id); };
const FACTS = JSON.parse($('engine').dataset.facts || '{}');

// Four workers, so that nobody waits for another: the live numbers, curves, the whole line, motion.
const crew = { url: null, workers: {}, number: 0, waiting: {} };

async function unpack() {
  const packed = Uint8Array.from(atob($('engine').textContent), function (c) { return c.charCodeAt(0); });
  const text = await new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream('gzip'))).text();
  crew.url = URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
}

function ask(name, message) {
  if (!crew.workers[name]) {
    const worker = new Worker(crew.url);
    worker.onmessage = function (event) {
      const done = crew.waiting[event.data.number];
      delete crew.waiting[event.data.number];
      if (done) { done(event.data.answer); }
    };
    crew.workers[name] = worker;
  }
  message.number = ++crew.number;
  return new Promise(function (resolve) {
    crew.waiting[message.number] = resolve;
    crew.workers[name].postMessage(message);
  });
}

function dismiss(name) {
  if (crew.workers[name]) { crew.workers[name].terminate(); delete crew.workers[name]; }
}

const state = {
  design: null, view: { fall: 0, temperature: NaN, side: 'clearance' }, text: '', written: null,
  undo: [], redo: [], answer: null, kept: [], version: 0, lastControl: null, gesture: false, asked: false, again: false, inTime: null
};
const times = { turn: [], curve: [], play: [], longest: [] };
let turnStart = 0;

function base64url(text) {
  let binary = '';
  new TextEncoder().encode(text).forEach(function (b) { binary += String.fromCharCode(b); });
  return btoa(binary).replace(/\+/g, '-').replace(/\//g, '_').replace(/=+$/, '');
}

function fromBase64url(text) {
  const binary = atob(text.replace(/-/g, '+').replace(/_/g, '/'));
  return new TextDecoder('utf-8', { fatal: true }).decode(Uint8Array.from(binary, function (c) { return c.charCodeAt(0); }));
}

function say(text) { $('note').textContent = text || ''; }

// ---- changing the design ----

function remember() {
  state.undo.push(state.text);
  if (state.undo.length > 200) { state.undo.shift(); }
  state.redo = [];
}

function change(set, oneGesture) {
  turnStart = performance.now();
  if (!(oneGesture && state.gesture)) { remember(); }
  state.gesture = Boolean(oneGesture);
  const next = copyOf(state.design);
  let note = '';
  try { note = set(next, state.view) || ''; } catch (e) { note = String(e.message || e); }
  say(note);
  take(next, JSON.stringify(next));
}

function take(design, text) {
  state.design = design;
  state.text = text;
  state.version++;
  state.view.fall = Math.min(state.view.fall, Math.max(0, (design.falls || []).length - 1));
  showControls();
  showChoices();
  live();
  later('link', 300, function () { history.replaceState(null, '', address()); });
  later('curve', 120, startCurve);
  $('result').textContent = '';
  $('whole-state').textContent = 'Will be computed when you stop turning…';
  dismiss('whole');
  later('whole', 900, function () { whole(false); });
  if (state.inTime) { state.inTime = null; $('play-said').textContent = 'The design has changed: play again.'; }
  stopPlay();
  player.motion = null;
  $('time').disabled = true;
  $('played').hidden = true;
}

const timers = {};
function later(name, ms, work) { clearTimeout(timers[name]); timers[name] = setTimeout(work, ms); }

function load(text, note) {
  let design;
  try { design = JSON.parse(text); } catch (e) { say('This is no design file: ' + e.message); return false; }
  if (!design || !Array.isArray(design.supports) || design.supports.length < 2 || !Array.isArray(design.workers) || !design.workers.length || !design.cable || !design.installed) {
    say('This is no design file: cable, supports, installed and workers must be there.');
    return false;
  }
  let kept = text;
  if (!design.falls || !design.falls.length) {
    design.falls = [{ id: 'middle of span 1', span: 1, station: quantity('length', runOf(design, 1) / 2), fallers: [design.workers[0].id] }];
    kept = JSON.stringify(design);
    note = 'The design states no fall: one in the middle of span 1 was put in.';
  }
  if (state.text) { remember(); }
  state.view.fall = 0;
  state.view.temperature = NaN;
  say(note || '');
  take(design, kept);
  return true;
}

// ---- controls ----

let controlKey = '';
const controls = {};

function niceStep(variable) {
  if (variable.kind === 'count') { return 1; }
  const low = fromSi(variable.kind, variable.min), high = fromSi(variable.kind, variable.max);
  return (steps(0, high - low, 250)[1] || 0.001);
}

function showControls() {
  const list = variables(state.design, state.view);
  const key = unitSystem + '|' + list.map(function (v) { return v.id + v.label; }).join('|');
  if (key !== controlKey) { buildControls(list); controlKey = key; }
  $('title').value = state.design.title || '';
  list.forEach(function (v) {
    const c = controls[v.id];
    c.variable = v;
    const value = v.get(state.design, state.view);
    if (v.options) { if (document.activeElement !== c.select) { c.select.value = value; } return; }
    const low = Math.min(fromSi(v.kind, v.min), fromSi(v.kind, value)), high = Math.max(fromSi(v.kind, v.max), fromSi(v.kind, value));
    const step = niceStep(v);
    c.range.min = Math.floor(low / step) * step;
    c.range.max = high;
    c.range.step = step;
    if (document.activeElement !== c.range) { c.range.value = fromSi(v.kind, value); }
    c.range.setAttribute('aria-valuetext', withUnit(v.kind, value));
    if (document.activeElement !== c.text) { c.text.value = plain(Number(fromSi(v.kind, value).toFixed(4))); }
    c.bounds.textContent = 'slider ' + plain(Number(fromSi(v.kind, v.min).toPrecision(4))) + ' to ' + plain(Number(fromSi(v.kind, v.max).toPrecision(4))) + ' ' + unitOf(v.kind);
  });
}

function make(name, attributes, parent, text) {
  const node = document.createElement(name);
  Object.keys(attributes || {}).forEach(function (k) { node.setAttribute(k, attributes[k]); });
  if (text !== undefined) { node.textContent = text; }
  if (parent) { parent.appendChild(node); }
  return node;
}

function buildControls(list) {
  const open = {};
  document.querySelectorAll('details.group').forEach(function (d) { open[d.dataset.name] = d.open; });
  const focused = document.activeElement && document.activeElement.id;
  const box = $('controls');
  box.textContent = '';
  Object.keys(controls).forEach(function (k) { delete controls[k]; });
  const groups = {};
  const narrow = window.innerWidth <= 860;
  list.forEach(function (v) {
    if (!groups[v.group]) {
      const d = make('details', { 'class': 'group', 'data-name': v.group }, box);
      make('summary', {}, d, v.group);
      d.open = v.group in open ? open[v.group] : !narrow && v.group !== 'Ends' || v.group === 'Line';
      groups[v.group] = d;
    }
    const id = 'v-' + v.id.replace(/\W/g, '-');
    const div = make('div', { 'class': 'control' }, groups[v.group]);
    make('label', { 'for': id }, div, v.label);
    if (v.options) {
      const select = make('select', { id: id }, div);
      v.options.forEach(function (o) { make('option', { value: o[0] }, select, o[1]); });
      select.addEventListener('change', function () { state.lastControl = v.id; change(function (d, view) { return controls[v.id].variable.set(d, view, select.value); }); });
      controls[v.id] = { select: select, wrong: make('p', { 'class': 'wrong', role: 'alert' }, div), variable: v };
      return;
    }
    const row = make('div', { 'class': 'row' }, div);
    const range = make('input', { type: 'range', id: id, 'aria-describedby': id + '-w' }, row);
    const text = make('input', { type: 'text', inputmode: 'decimal', id: id + '-x', 'aria-label': v.label + ', exact, in ' + (unitOf(v.kind) || 'plain number'), autocomplete: 'off', 'aria-describedby': id + '-b ' + id + '-w' }, row);
    make('span', {}, row, unitOf(v.kind));
    const bounds = make('div', { 'class': 'bounds', id: id + '-b' }, div);
    const wrong = make('p', { 'class': 'wrong', id: id + '-w', role: 'alert' }, div);
    controls[v.id] = { range: range, text: text, bounds: bounds, wrong: wrong, variable: v };
    range.addEventListener('input', function () {
      state.lastControl = v.id;
      change(function (d, view) { return controls[v.id].variable.set(d, view, toSi(v.kind, Number(range.value))); }, true);
    });
    range.addEventListener('change', function () { state.gesture = false; });
    const enter = function () {
      const written = text.value.trim().replace(',', '.').replace('\u2212', '-');
      const si = /[a-z°%]/i.test(written.replace(/e[+-]?\d+/i, '')) ? siOf(written) : written === '' ? NaN : toSi(v.kind, Number(written));
      state.lastControl = v.id;
      if (!isFinite(si)) { wrong.textContent = '“' + text.value + '” is no number' + (unitOf(v.kind) ? ', alone or with its unit' : '') + '.'; return; }
      const now = controls[v.id].variable.get(state.design, state.view);
      if (Math.abs(si - now) > 1e-9 * Math.max(1e-6, Math.abs(now))) {
        change(function (d, view) { return controls[v.id].variable.set(d, view, si); });
      } else { wrong.textContent = ''; }
    };
    text.addEventListener('change', enter);
    text.addEventListener('keydown', function (e) { if (e.key === 'Enter') { enter(); } });
  });
  if (focused && $(focused)) { $(focused).focus(); }
}

function options(select, list, value) {
  const key = JSON.stringify(list);
  if (select.dataset.key !== key) {
    select.textContent = '';
    list.forEach(function (o) { make('option', { value: o[0] }, select, o[1]); });
    select.dataset.key = key;
  }
  select.value = value;
}

// The temperatures in service [°C] with the limits of cold and hot absorbers that lie between them, as the library has them.
function temperatures(design) {
  const service = ((design.service && design.service.temperatures) || []).map(siOf);
  const limits = [];
  design.workers.forEach(function (w) {
    const c = w.connection, conditions = ((c.absorber || c.retractable || {}).conditions) || {};
    Object.keys(conditions).forEach(function (k) {
      const t = siOf(conditions[k].temperature);
      if (t > Math.min.apply(null, service) && t < Math.max.apply(null, service) && service.concat(limits).indexOf(t) < 0) { limits.push(t); }
    });
  });
  return service.concat(limits);
}

function showChoices() {
  const d = state.design;
  options($('fall'), d.falls.map(function (f, i) { return [String(i), f.id]; }), String(state.view.fall));
  options($('temperature'), [['NaN', 'as installed']].concat(temperatures(d).map(function (t) { return [String(t), withUnit('temperature', t)]; })), String(state.view.temperature));
  const list = variables(d, state.view).filter(function (v) { return !v.options; });
  const chosen = $('curve-variable').value || 'run.all';
  options($('curve-variable'), list.map(function (v) { return [v.id, v.label]; }), chosen);
  if (!$('curve-variable').value) { $('curve-variable').value = 'run.all'; }
  options($('curve-result'), RESULTS.map(function (r) { return [r.id, r.label]; }), $('curve-result').value || 'endAnchorLoad');
  $('undo').disabled = !state.undo.length;
  $('redo').disabled = !state.redo.length;
}

// ---- live numbers ----

async function live() {
  if (state.asked) { state.again = true; return; }
  state.asked = true;
  const version = state.version, began = turnStart;
  const answer = await ask('live', { ask: 'arrest', design: state.text, fall: state.view.fall, temperature: state.view.temperature });
  state.asked = false;
  if (version === state.version || !answer.refused) { show(answer, version === state.version); }
  if (began) {
    requestAnimationFrame(function () { times.turn.push(performance.now() - began); });
    if (began === turnStart) { turnStart = 0; }
  }
  if (state.again) { state.again = false; live(); }
}

function show(answer, current) {
  const refused = $('refused');
  refused.textContent = '';
  Object.keys(controls).forEach(function (k) { controls[k].wrong.textContent = ''; });
  const bad = answer.refused || answer.failed || answer.fault;
  ['elevation', 'results', 'supports', 'account'].forEach(function (id) { $(id).classList.toggle('stale', Boolean(bad)); });
  if (bad) {
    make('strong', {}, refused, answer.refused ? 'The library refuses this design:' : answer.failed ? 'No equilibrium was found:' : 'The page has failed:');
    const list = make('ul', {}, refused);
    const rules = answer.refused ? answer.refused.map(function (r) { return r.path + ' ' + r.value + ': ' + r.rule; }) : [answer.failed || answer.fault];
    rules.forEach(function (r) { make('li', {}, list, r); });
    make('div', {}, refused, 'Shown is the last design that could be computed. Undo goes back.');
    const c = controls[state.lastControl];
    if (c) { c.wrong.textContent = rules[0]; }
    $('strip-text').textContent = 'The numbers shown are not those of the present input.';
    return;
  }
  state.answer = answer;
  drawAll();
  if (current) { later('said', 800, saidAloud); }
}

function drawAll() {
  const answer = state.answer;
  if (!answer) { return; }
  state.frame = drawElevation($('elevation'), answer, state.view.side);
  const body = $('results').tBodies[0];
  body.textContent = '';
  RESULTS.forEach(function (r) {
    const row = make('tr', {}, body);
    make('th', { scope: 'row' }, row, r.label);
    ['maximum', 'clearance'].forEach(function (side) {
      make('td', r.side === side ? { 'class': 'decides' } : {}, row, withUnit(r.kind, answer[side][r.id]));
    });
  });
  const supports = $('supports').tBodies[0];
  supports.textContent = '';
  answer.maximum.supports.forEach(function (s, i) {
    const row = make('tr', {}, supports), capacity = answer.supports[i].capacity;
    make('th', { scope: 'row' }, row, s.id);
    make('td', {}, row, withUnit('force', s.force));
    make('td', capacity !== undefined && s.force > capacity ? { 'class': 'no' } : {}, row, capacity === undefined ? 'not stated' : withUnit('force', capacity) + (s.force > capacity ? ' – exceeded' : ''));
  });
  const account = $('account').tBodies[0];
  account.textContent = '';
  const drawn = answer[state.view.side];
  drawn.rows.forEach(function (r) {
    const row = make('tr', {}, account);
    make('th', { scope: 'row' }, row, r.item);
    make('td', {}, row, withUnit('length', r.value));
    make('td', {}, row, withUnit('length', r.elevation));
  });
  if (drawn.margin !== undefined) {
    const row = make('tr', { 'class': drawn.margin < 0 ? 'no' : 'decides' }, account);
    make('th', { scope: 'row' }, row, 'left over above the obstruction');
    make('td', {}, row, withUnit('length', drawn.margin));
    make('td', {}, row, withUnit('length', drawn.obstruction));
  }
  showCautions();
}

function showCautions() {
  const list = $('caution-list'), seen = {}, texts = [];
  list.textContent = '';
  ['maximum', 'clearance'].forEach(function (side) {
    state.answer[side].warnings.forEach(function (w) { if (!seen[w.text]) { seen[w.text] = true; texts.push(w.text); } });
    if (state.answer[side].bottomedOut) { const t = 'The connection bottoms out with the ' + (side === 'maximum' ? 'highest' : 'lowest') + ' absorber force.'; if (!seen[t]) { seen[t] = true; texts.push(t); } }
  });
  const c = state.answer.clearance;
  if (c.margin !== undefined && c.margin < 0) { texts.unshift('The worker strikes what lies below, or the margin is used up: ' + withUnit('length', c.margin) + ' left over.'); }
  state.answer.maximum.supports.forEach(function (s, i) {
    const capacity = state.answer.supports[i].capacity;
    if (capacity !== undefined && s.force > capacity) { texts.unshift('Load on ' + s.id + ' exceeds its stated capacity.'); }
  });
  ['maximum', 'clearance'].forEach(function (side) {
    if (state.answer[side].condition) { texts.push('The ' + (side === 'maximum' ? 'highest' : 'lowest') + ' absorber force is that stated for the condition: ' + state.answer[side].condition + '.'); }
  });
  texts.push.apply(texts, incidentTexts());
  texts.push('These numbers are one fall at one temperature by energy balance. The worst of the whole line stands below; followed in time, loads can be larger.');
  texts.forEach(function (t) { make('li', {}, list, t); });
  const many = texts.length;
  $('strip-text').textContent = (many > 1 ? many + ' cautions. ' + texts[0] : 'An aid for a qualified person; it does not replace codes, instructions or tests.');
}

// What the design states besides its falls is in no number of one fall; the worst of the whole line has it.
function incidentTexts() {
  const d = state.design, texts = [];
  if (d.secondFall) { texts.push('The design states a second fall, of ' + d.secondFall.worker + '. It is left out here, in the curves and in the fall that is played, and in the worst of the whole line until that is followed in time.'); }
  if (hasFactors(d)) {
    const f = d.modelFactors;
    texts.push('The design states model factors: force × ' + (f.force || 1) + ', distance × ' + (f.distance || 1) + '. They are left out here, in the curves and in the fall that is played; the worst of the whole line has them.');
  }
  if (d.rescue) { texts.push('The design states a rescuer on the line. The rescue is left out here, in the curves and in the fall that is played; the worst of the whole line has it.'); }
  return texts;
}

function hasFactors(d) {
  const f = d.modelFactors || {};
  return (f.force || 1) !== 1 || (f.distance || 1) !== 1;
}

function saidAloud() {
  const a = state.answer;
  if (!a) { return; }
  $('said').textContent = 'End anchor load ' + withUnit('force', a.maximum.endAnchorLoad) + ', clearance needed below the line ' + withUnit('length', a.clearance.requiredBelowLine)
    + (a.clearance.margin === undefined ? '' : ', left over ' + withUnit('length', a.clearance.margin)) + '.';
}

// ---- the whole line ----

const NAMES = { endAnchorLoad: 'end anchor load', intermediateAnchorLoad: 'load on a post', supportLoad: 'load on', maximumTension: 'largest tension', arrestForce: 'arrest force', clearanceMargin: 'clearance left over', requiredBelowLine: 'clearance needed below the line', totalFallDistance: 'total fall distance' };
const UNIT_KIND = { N: 'force', m: 'length', J: 'energy', '°': 'angle', '': 'number', '-': 'number' };

async function whole(motion) {
  dismiss('whole');
  const version = state.version, began = performance.now();
  $('whole-state').textContent = motion ? 'Following arrests in time along the whole line…' : 'Looking for the worst along the whole line…';
  const text = await ask('whole', { ask: 'result', design: state.text, motion: motion, version: FACTS.version, commit: FACTS.commit, runtime: 'browser, ' + FACTS.compiler });
  if (version !== state.version) { return; }
  let file;
  try { file = JSON.parse(text); } catch (e) { file = { fault: text.fault || String(e) }; }
  if (!file.assessment) {
    $('whole-state').textContent = 'Not computed: ' + (file.failed || file.fault || (file.refused || []).map(function (r) { return r.path + ': ' + r.rule; }).join('; '));
    return;
  }
  $('result').textContent = text.replace(/</g, '\\u003c');
  state.file = file;
  $('whole-state').textContent = (motion ? 'By energy balance and in time' : 'By energy balance; arrests in time' + (state.design.secondFall ? ', the second fall among them,' : '') + ' are left out') + ', computed in ' + ((performance.now() - began) / 1000).toFixed(1) + ' s.';
  showWhole();
}

function showWhole() {
  const file = state.file;
  if (!file || !file.assessment) { return; }
  const governing = $('governing').tBodies[0];
  governing.textContent = '';
  file.assessment.governing.forEach(function (g) {
    const row = make('tr', {}, governing);
    make('th', { scope: 'row' }, row, (NAMES[g.quantity] || g.quantity.replace(/([A-Z])/g, ' $1').toLowerCase()) + (g.support ? ' ' + g.support : ''));
    const kind = UNIT_KIND[g.unit] || 'number', unit = UNIT_KIND[g.unit] ? '' : ' ' + g.unit;
    const judged = make('td', {}, row, withUnit(kind, g.factored) + unit);
    if (g.factored !== g.value) { make('span', { 'class': 'small' }, judged, 'as computed ' + withUnit(kind, g.value) + unit + (g.transientAllowance > 0 && g.method === 'transient' ? ', without what the mesh may hide' : '') + (hasFactors(state.design) ? ', without the model factor' : '')); }
    const where = make('td', {}, row, g.place && g.place.support ? 'at ' + g.place.support : g.place ? 'span ' + g.place.span + ', ' + withUnit('length', g.place.station) : '');
    make('span', { 'class': 'small' }, where, [
      g.fall, g.laterFall ? g.laterFall.worker + ' falls ' + g.laterFall.delay.toFixed(2) + ' s later' : '', g.attachment, withUnit('temperature', g.temperature),
      (g.absorberConditions || []).map(function (c) { return 'absorber of ' + c.worker + ' ' + c.condition; }).join(', '), g.method
    ].filter(Boolean).join(', '));
  });
  const criteria = $('criteria').tBodies[0];
  criteria.textContent = '';
  file.assessment.criteria.forEach(function (c) {
    const row = make('tr', {}, criteria);
    const name = make('th', { scope: 'row' }, row, c.id);
    make('span', { 'class': 'small' }, name, c.comparison + '. ' + c.source);
    make('td', {}, row, c.ratio === undefined ? '–' : c.ratio.toFixed(2));
    const result = make('td', {}, row);
    make('span', { 'class': c.result === 'MET' ? 'yes' : c.result === 'NOT MET' ? 'no' : 'unknown' }, result, c.result.toLowerCase());
    if (c.why) { make('span', { 'class': 'small' }, result, c.why); }
  });
  if (!file.assessment.criteria.length) { make('td', { colspan: 3 }, make('tr', {}, criteria), 'The design asks for none.'); }
  const warnings = $('whole-warnings');
  warnings.textContent = '';
  file.assessment.warnings.forEach(function (w) { make('li', {}, warnings, w.text + (w.where ? ' (' + w.where + ')' : '')); });
  file.assessment.notComputed.forEach(function (n) { make('li', {}, warnings, 'Not computed: ' + n.what + ': ' + n.why); });
}

// ---- curves ----

const curve = { points: [], run: 0, axis: null };

function startCurve(keepRange) {
  const v = variables(state.design, state.view).find(function (x) { return x.id === $('curve-variable').value; });
  const r = RESULTS.find(function (x) { return x.id === $('curve-result').value; });
  if (!v || !r) { return; }
  const present = v.get(state.design, state.view);
  const same = curve.axis && curve.axis.id === v.id && curve.axis.system === unitSystem;
  if (!same) {
    $('curve-from').value = plain(Number(fromSi(v.kind, Math.min(v.min, present)).toFixed(3)));
    $('curve-to').value = plain(Number(fromSi(v.kind, Math.max(v.max, present)).toFixed(3)));
  }
  const from = toSi(v.kind, Number($('curve-from').value)), to = toSi(v.kind, Number($('curve-to').value));
  if (!(to > from)) { say('The curve needs a range: from less than to.'); return; }
  if (state.kept.length && curve.axis && (curve.axis.id !== v.id || curve.axis.result !== r.id)) { state.kept = []; showKept(); }
  curve.axis = { id: v.id, kind: v.kind, label: v.label, result: r.id, resultKind: r.kind, resultLabel: r.label, present: present, system: unitSystem, side: r.side };
  const count = v.kind === 'count' ? Math.round(to - from) + 1 : POINTS;
  const xs = [];
  for (let i = 0; i < count; i++) { xs.push(v.kind === 'count' ? Math.round(from) + i : from + (to - from) * i / (count - 1)); }
  $('held').textContent = held(v);
  if (!$('keep-name').value || $('keep-name').dataset.own !== 'yes') { $('keep-name').value = 'curve ' + (state.kept.length + 1); }
  runCurve(v, xs, ++curve.run);
}

function held(v) {
  const d = state.design, fall = fallOf(d, state.view);
  const parts = variables(d, state.view).filter(function (x) {
    return !x.options && x.id !== v.id && ['run.all', 'friction', 'pretension', 'sag', 'EA', 'mass', 'maximumForce', 'clearanceForce', 'tautLength', 'spans'].indexOf(x.id) >= 0 && !(x.id === 'run.all' && /^run/.test(v.id));
  }).map(function (x) { return x.label.charAt(0).toLowerCase() + x.label.slice(1) + ' ' + withUnit(x.kind, x.get(d, state.view)); });
  return 'Held: ' + parts.join(', ') + ', fall “' + fall.id + '”' + (/^run|^spans/.test(v.id) ? ' at the same share of its span' : '') + ', temperature '
    + (isNaN(state.view.temperature) ? 'as installed' : withUnit('temperature', state.view.temperature)) + ', and everything else in the design. By energy balance, '
    + (curve.axis.side === 'maximum' ? 'highest' : 'lowest') + ' absorber force. The upright line is the present design; gaps are designs that the library refuses.';
}

// The design with another value, without what no arrest depends on.
function bare(v, x) {
  const d = copyOf(state.design);
  delete d.project;
  delete d.criteria;
  try { v.set(d, state.view, x); } catch (e) { return '{}'; }
  return JSON.stringify(d);
}

async function runCurve(v, xs, run) {
  // What the curve shows may be chosen anew while answers are on their way: these are for the axis they were asked for.
  const began = performance.now(), points = new Array(xs.length).fill(null), axis = curve.axis;
  $('keep').disabled = true;
  // Two workers share the points in small pieces, so that a new curve need not wait for an old one.
  let at = 0;
  const share = async function (worker) {
    while (at < xs.length && run === curve.run) {
      const from = at, slice = xs.slice(from, from + 6);
      at += slice.length;
      const answers = await ask(worker, { ask: 'curve', designs: slice.map(function (x) { return bare(v, x); }), fall: state.view.fall, temperature: state.view.temperature, side: axis.side });
      if (run !== curve.run) { return; }
      if (answers.fault) { say(answers.fault); return; }
      answers.forEach(function (a, i) {
        const side = a[axis.side];
        points[from + i] = side && side[axis.result] !== undefined ? [slice[i], side[axis.result]] : null;
      });
    }
  };
  await Promise.all([share('curve'), share('curve2')]);
  if (run !== curve.run) { return; }
  $('keep').disabled = false;
  curve.points = points;
  curve.inTime = null;
  paintCurves();
  times.curve.push(performance.now() - began);
}

function paintCurves() {
  if (!curve.axis) { return; }
  const list = [{ name: 'the present design', points: curve.points }].concat(state.kept.map(function (k) { return { name: k.name, points: k.points, kept: true }; }));
  if (curve.inTime) { list.push({ name: 'in time', points: curve.inTime, inTime: true, kept: true }); }
  curve.axis.nothing = curve.points.length && !curve.points.some(Boolean) ? 'This design has no such result in this range.' : '';
  drawCurves($('curve'), list, curve.axis);
}

function keep() {
  if ($('keep').disabled || !curve.points.some(Boolean)) { return; }
  state.kept.push({ name: $('keep-name').value.trim() || 'curve ' + (state.kept.length + 1), points: curve.points });
  if (state.kept.length > 4) { state.kept.shift(); }
  $('keep-name').dataset.own = 'no';
  $('keep-name').value = 'curve ' + (state.kept.length + 1);
  showKept();
  paintCurves();
}

function showKept() {
  const list = $('kept');
  list.textContent = '';
  state.kept.forEach(function (k, i) {
    const item = make('li', {}, list);
    const swatch = el('svg', { width: 26, height: 8, 'aria-hidden': 'true' }, item);
    el('path', { d: 'M0 4H26', 'class': 'curve kept' + ((i + 1) % 4) }, swatch);
    make('span', {}, item, k.name);
    make('button', { type: 'button', 'aria-label': 'Forget ' + k.name }, item, 'Forget').addEventListener('click', function () { state.kept.splice(i, 1); showKept(); paintCurves(); });
  });
}

async function curveInTime() {
  const results = { endAnchorLoad: 1, maximumTension: 1, arrestForce: 1, deployment: 1, totalFallDistance: 1, requiredBelowLine: 1, margin: 1, sag: 1 };
  const axis = curve.axis;
  if (!axis) { return; }
  const v = variables(state.design, state.view).find(function (x) { return x.id === axis.id; });
  if (!results[axis.result]) { say('This result is not followed in time.'); return; }
  const xs = curve.points.filter(Boolean).map(function (p) { return p[0]; }), run = curve.run, some = [];
  for (let i = 0; i < 6 && xs.length; i++) { some.push(xs[Math.round(i * (xs.length - 1) / 5)]); }
  curve.inTime = [];
  for (const x of some) {
    const d = copyOf(state.design);
    v.set(d, state.view, x);
    say('In time, on one mesh: point ' + (curve.inTime.length + 1) + ' of ' + some.length + '…');
    const m = await ask('motion', { ask: 'inTime', design: JSON.stringify(d), fall: state.view.fall, temperature: state.view.temperature, clearance: axis.side === 'clearance', refinements: 0 });
    if (run !== curve.run) { return; }
    curve.inTime.push(m[axis.result] === undefined ? null : [x, m[axis.result]]);
    paintCurves();
  }
  say('The points with a dot are followed in time on one mesh; what finer meshes would change is not known.');
}

// ---- playing a fall ----

async function play() {
  if (player.running) { stopPlay(); return; }
  if (player.motion) { runPlay(); return; }
  if (!state.answer) { return; }
  const began = performance.now(), version = state.version;
  $('play').disabled = true;
  $('play-said').textContent = 'Following the fall in time…';
  const question = { ask: 'inTime', design: state.text, fall: state.view.fall, temperature: state.view.temperature, clearance: state.view.side === 'clearance', refinements: 0 };
  const m = await ask('motion', question);
  $('play').disabled = false;
  if (version !== state.version) { $('play-said').textContent = 'The design was changed meanwhile; play again.'; return; }
  if (!m.times) { $('play-said').textContent = 'Not followed: ' + (m.failed || m.fault || m.refused.map(function (r) { return r.path + ' ' + r.value + ': ' + r.rule; }).join('; ')); return; }
  state.inTime = m;
  startMotion(m, state.answer);
  runPlay();
  times.play.push(performance.now() - began);
  $('play-said').textContent = spoken(m) + ' One mesh so far; a bound is being computed…';
  const finer = await ask('motion', Object.assign({}, question, { refinements: 2 }));
  if (version !== state.version || state.inTime !== m || !finer.times) { return; }
  $('play-said').textContent = spoken(finer) + (finer.uncertainty === undefined ? '' : ' Finer meshes would change a peak by at most ' + (100 * finer.uncertainty).toFixed(1) + ' %.');
}

function spoken(m) {
  const ratio = function (v) { return v === undefined ? 'unknown' : v.toFixed(2); };
  return (state.view.side === 'maximum' ? 'Highest' : 'Lowest') + ' absorber force. In time over energy balance: tension ' + ratio(m.tensionRatio) + ', arrest force ' + ratio(m.forceRatio)
    + ', fall distance ' + ratio(m.fallDistanceRatio) + '. End anchor load in time ' + withUnit('force', m.endAnchorLoad) + '. Between supports and worker the line is drawn straight.';
}

// ---- files ----

function save(name, text, type) {
  const url = URL.createObjectURL(new Blob([text], { type: type }));
  const a = make('a', { href: url, download: name }, document.body);
  a.click();
  a.remove();
  setTimeout(function () { URL.revokeObjectURL(url); }, 10000);
}

function stem() { return (state.design.title || 'line').replace(/[^A-Za-z0-9]+/g, '-').replace(/^-|-$/g, '').toLowerCase().slice(0, 60) || 'line'; }

function cell(text) {
  const t = String(text);
  const inert = /^[=+\-@\t\r]/.test(t) && !/^[+-]?[0-9.]+(e[+-]?[0-9]+)?$/i.test(t) ? "'" + t : t;
  return '"' + inert.replace(/"/g, '""') + '"';
}

function numbersCsv() {
  const rows = [['quantity', 'unit', 'highest absorber force', 'lowest absorber force']];
  RESULTS.forEach(function (r) {
    const value = function (side) { const v = state.answer[side][r.id]; return v === undefined ? '' : fromSi(r.kind, v); };
    rows.push([r.label, unitOf(r.kind), value('maximum'), value('clearance')]);
  });
  state.answer.maximum.supports.forEach(function (s, i) { rows.push(['load on ' + s.id, unitOf('force'), fromSi('force', s.force), fromSi('force', state.answer.clearance.supports[i].force)]); });
  return rows.map(function (r) { return r.map(cell).join(','); }).join('\r\n') + '\r\n';
}

function curvesCsv() {
  const a = curve.axis, rows = [['curve', a.label + ' [' + unitOf(a.kind) + ']', a.resultLabel + ' [' + unitOf(a.resultKind) + ']']];
  [{ name: 'the present design', points: curve.points }].concat(state.kept).concat(curve.inTime ? [{ name: 'in time, one mesh', points: curve.inTime }] : []).forEach(function (c) {
    c.points.forEach(function (p) { if (p) { rows.push([c.name, fromSi(a.kind, p[0]), fromSi(a.resultKind, p[1])]); } });
  });
  return rows.map(function (r) { return r.map(cell).join(','); }).join('\r\n') + '\r\n';
}

// ---- lessons ----

function merged(target, patch) {
  if (patch === null || typeof patch !== 'object' || Array.isArray(patch)) { return patch; }
  const out = target && typeof target === 'object' && !Array.isArray(target) ? Object.assign({}, target) : {};
  Object.keys(patch).forEach(function (k) { if (patch[k] === null) { delete out[k]; } else { out[k] = merged(out[k], patch[k]); } });
  return out;
}

function showLessons() {
  const data = JSON.parse($('lesson-data').textContent);
  data.lessons.forEach(function (lesson) {
    const item = make('li', {}, $('lessons'));
    make('strong', {}, item, lesson.title);
    make('p', {}, item, lesson.question);
    make('button', { type: 'button' }, item, 'Set the page to this').addEventListener('click', function () {
      if (lesson.curve) { curve.axis = null; $('curve-result').value = lesson.curve.result; }
      if (load(JSON.stringify(merged(data.design, lesson.patch)), 'Lesson: ' + lesson.title)) {
        if (lesson.curve) { $('curve-variable').value = lesson.curve.variable; startCurve(); }
        $('h-see').scrollIntoView({ block: 'start' });
      }
    });
    const details = make('details', {}, item);
    make('summary', {}, details, 'Answer');
    make('p', {}, details, lesson.answer);
    lesson.statements.forEach(function (s) { make('p', {}, details, s.say); });
  });
}

// ---- speed ----

function quantile(list, share) {
  const sorted = list.slice().sort(function (a, b) { return a - b; });
  return sorted.length ? sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] : NaN;
}

async function measure() {
  const pause = function (ms) { return new Promise(function (r) { setTimeout(r, ms); }); };
  const before = copyOf(state.design), text = state.text;
  await warm(20);
  times.turn = []; times.curve = []; times.play = []; times.longest = [];
  const range = controls['run.all'].range;
  const middle = Number(range.value);
  for (let i = 0; i < 100; i++) {
    range.value = middle + Math.sin(i / 5) * 2;
    range.dispatchEvent(new Event('input', { bubbles: true }));
    await pause(60);
  }
  range.dispatchEvent(new Event('change', { bubbles: true }));
  take(before, text);
  await pause(1500);
  for (let i = 0; i < 5; i++) { startCurve(); await pause(1200); }
  dismiss('whole');
  clearTimeout(timers.whole);
  player.motion = null;
  await play();
  stopPlay();
  const out = {
    turns: times.turn.length, turnMedian: quantile(times.turn, 0.5), turnP95: quantile(times.turn, 0.95),
    curvePoints: curve.points.length, curveMedian: quantile(times.curve.slice(-5), 0.5), curveLargest: quantile(times.curve.slice(-5), 1),
    playStart: times.play[0], longestTask: times.longest.length ? Math.max.apply(null, times.longest) : 0,
    design: state.design.title, spans: spansOf(state.design), browser: navigator.userAgent, cores: navigator.hardwareConcurrency, unit: 'ms'
  };
  $('speeds').textContent = JSON.stringify(out, null, 2);
  later('whole', 900, function () { whole(false); });
  return out;
}

// A script runs slowly before the browser has compiled it: some arrests that nobody asked for, until somebody does.
async function warm(times) {
  for (let i = 0; i < times && !state.asked && state.undo.length === 0; i++) {
    await ask('live', { ask: 'curve', designs: [state.text, state.text], fall: state.view.fall, temperature: state.view.temperature });
  }
}

// ---- begin ----

function bind() {
  $('units').addEventListener('change', function () {
    unitSystem = $('units').value;
    showControls(); showChoices(); drawAll(); showWhole(); startCurve();
    if (player.motion) { startMotion(player.motion, player.answer); }
  });
  $('undo').addEventListener('click', function () { if (state.undo.length) { state.redo.push(state.text); const t = state.undo.pop(); say(''); take(JSON.parse(t), t); } });
  $('redo').addEventListener('click', function () { if (state.redo.length) { state.undo.push(state.text); const t = state.redo.pop(); take(JSON.parse(t), t); } });
  document.addEventListener('keydown', function (e) {
    if ((e.ctrlKey || e.metaKey) && !e.shiftKey && e.key === 'z' && !/^(text|search)$/.test(document.activeElement.type || '')) { e.preventDefault(); $('undo').click(); }
  });
  $('open').addEventListener('click', function () { $('file').click(); });
  $('file').addEventListener('change', function () {
    const file = $('file').files[0];
    if (file && file.size <= 10000000) { file.text().then(function (t) { load(t, 'Opened: ' + file.name); }); } else if (file) { say('The file is too large: at most 10 MB are read.'); }
    $('file').value = '';
  });
  $('save').addEventListener('click', function () { save(stem() + '.json', state.text, 'application/json'); });
  $('copy').addEventListener('click', function () {
    history.replaceState(null, '', address());
    const done = function () { say('The address of this page now holds the design; it is copied.'); };
    if (navigator.clipboard) { navigator.clipboard.writeText(location.href).then(done, function () { say('The address of this page now holds the design: copy it from there.'); }); } else { say('The address of this page now holds the design: copy it from there.'); }
  });
  $('title').addEventListener('change', function () { change(function (d) { d.title = $('title').value || 'Untitled'; }); });
  $('fall').addEventListener('change', function () { state.view.fall = Number($('fall').value); take(state.design, state.text); });
  $('temperature').addEventListener('change', function () { state.view.temperature = Number($('temperature').value); take(state.design, state.text); });
  $('side').addEventListener('change', function () { state.view.side = $('side').value; player.motion = null; $('played').hidden = true; stopPlay(); drawAll(); history.replaceState(null, '', address()); });
  $('curve-variable').addEventListener('change', function () { curve.axis = null; startCurve(); });
  $('curve-result').addEventListener('change', function () { startCurve(); });
  ['curve-from', 'curve-to'].forEach(function (id) { $(id).addEventListener('change', function () { startCurve(); }); });
  $('keep').addEventListener('click', keep);
  $('keep-name').addEventListener('input', function () { $('keep-name').dataset.own = 'yes'; });
  $('curve-time').addEventListener('click', curveInTime);
  $('whole-motion').addEventListener('click', function () { whole(true); });
  $('save-result').addEventListener('click', function () { if ($('result').textContent) { save(stem() + '.result.json', $('result').textContent, 'application/json'); } });
  $('save-svg').addEventListener('click', function () { save(stem() + '.svg', svgFile($('elevation')), 'image/svg+xml'); });
  $('save-csv').addEventListener('click', function () { if (state.answer) { save(stem() + '.csv', numbersCsv(), 'text/csv'); } });
  $('save-curve-svg').addEventListener('click', function () { save(stem() + '-curve.svg', svgFile($('curve')), 'image/svg+xml'); });
  $('save-curve-csv').addEventListener('click', function () { if (curve.axis) { save(stem() + '-curve.csv', curvesCsv(), 'text/csv'); } });
  $('play').addEventListener('click', play);
  $('time').addEventListener('input', function () { stopPlay(); player.time = Number($('time').value); drawMoment(); });
  $('measure').addEventListener('click', measure);
  window.addEventListener('hashchange', function () { fromAddress(); });
  let width = window.innerWidth;
  window.addEventListener('resize', function () { if (window.innerWidth !== width) { width = window.innerWidth; drawAll(); paintCurves(); if (player.motion) { startMotion(player.motion, player.answer); } } });
  drag();
}

function drag() {
  const svg = $('elevation');
  let held = false;
  const move = function (e) {
    const box = svg.getBoundingClientRect();
    const along = state.frame.along((e.clientX - box.left) * svg.viewBox.baseVal.width / box.width);
    state.lastControl = 'place';
    change(function (d, view) { setAlong(d, view, Math.max(0, Math.min(lengthOf(d), along))); }, true);
  };
  svg.addEventListener('pointerdown', function (e) {
    if (!e.target.classList.contains('handle')) { return; }
    held = true;
    svg.setPointerCapture(e.pointerId);
    e.preventDefault();
  });
  svg.addEventListener('pointermove', function (e) { if (held) { move(e); } });
  ['pointerup', 'pointercancel'].forEach(function (n) { svg.addEventListener(n, function () { held = false; state.gesture = false; }); });
}

// The design, and what is looked at of it where that is not what a page begins with.
function address() {
  const view = state.view;
  return '#design=' + base64url(state.text) + (view.fall ? '&fall=' + (view.fall + 1) : '') + (isNaN(view.temperature) ? '' : '&temperature=' + view.temperature)
    + (view.side === 'maximum' ? '&force=highest' : '');
}

function viewFromAddress() {
  const of = function (name) { const m = new RegExp('&' + name + '=([^&]*)').exec(location.hash); return m ? m[1] : ''; };
  const fall = Number(of('fall')) - 1, temperature = of('temperature');
  const service = temperatures(state.design);
  state.view.fall = Number.isInteger(fall) && fall > 0 && fall < state.design.falls.length ? fall : 0;
  state.view.temperature = temperature !== '' && service.indexOf(Number(temperature)) >= 0 ? Number(temperature) : NaN;
  state.view.side = of('force') === 'highest' ? 'maximum' : 'clearance';
  $('side').value = state.view.side;
  take(state.design, state.text);
}

function fromAddress() {
  const m = /[#&]design=([A-Za-z0-9_-]+)/.exec(location.hash);
  if (!m) { return false; }
  let text;
  try { text = fromBase64url(m[1]); } catch (e) { say('The address holds no design that can be read.'); return false; }
  if (text !== state.text && !load(text)) { return false; }
  viewFromAddress();
  return true;
}

async function begin() {
  if (window.PerformanceObserver && PerformanceObserver.supportedEntryTypes.indexOf('longtask') >= 0) {
    new PerformanceObserver(function (list) { list.getEntries().forEach(function (e) { times.longest.push(e.duration); }); }).observe({ entryTypes: ['longtask'] });
  }
  await unpack();
  bind();
  showLessons();
  if (!fromAddress()) { load($('design').textContent.trim(), $('note').textContent); }
  state.undo = [];
  showChoices();
  warm(12);
later('motion', 2500, function () {
    if (!player.motion) { ask('motion', { ask: 'inTime', design: JSON.stringify(JSON.parse($('lesson-data').textContent).design), fall: 0, temperature: NaN, clearance: false, refinements: 0 }); }
  });
}

begin().catch(function (e) { say('This browser cannot run the page: ' + e); });
