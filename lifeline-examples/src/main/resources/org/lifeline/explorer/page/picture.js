'use strict';
// The elevation: the line as installed with the worker standing, and at the lowest point, to scale in each direction.
const SVG = 'http://www.w3.org/2000/svg';

function el(name, attributes, parent, text) {
  const node = document.createElementNS(SVG, name);
  Object.keys(attributes || {}).forEach(function (k) { node.setAttribute(k, attributes[k]); });
  if (text !== undefined) { node.textContent = text; }
  if (parent) { parent.appendChild(node); }
  return node;
}

// Round steps for an axis: 1, 2 or 5 times a power of ten, as few as asked for.
function steps(from, to, most) {
  const raw = (to - from) / Math.max(1, most), power = Math.pow(10, Math.floor(Math.log10(raw)));
  const step = power * [1, 2, 5, 10].find(function (f) { return f * power >= raw * 0.999; });
  const list = [];
  for (let v = Math.ceil(from / step - 1e-9) * step; v <= to + step * 1e-6; v += step) { list.push(Number(v.toPrecision(10))); }
  return list;
}

function pathOf(flat, x, z) {
  let d = '';
  for (let i = 0; i < flat.length; i += 2) { d += (i ? 'L' : 'M') + x(flat[i]).toFixed(1) + ' ' + z(flat[i + 1]).toFixed(1); }
  return d;
}

function figure(parent, x, feet, harness, kind) {
  const g = el('g', { 'class': 'person ' + kind }, parent);
  const tall = feet - harness, hip = feet - tall * 0.45;
  el('circle', { cx: x, cy: harness - tall * 0.16, r: Math.max(3, tall * 0.09) }, g);
  el('path', { d: 'M' + x + ' ' + (harness - tall * 0.06) + 'V' + hip + 'M' + x + ' ' + hip + 'L' + (x - tall * 0.14) + ' ' + feet + 'M' + x + ' ' + hip + 'L' + (x + tall * 0.14) + ' ' + feet
    + 'M' + (x - tall * 0.2) + ' ' + (harness + tall * 0.3) + 'L' + x + ' ' + (harness + tall * 0.04) + 'L' + (x + tall * 0.2) + ' ' + (harness + tall * 0.3) }, g);
  return g;
}

// Where things stand in the picture; the same for the picture and for the fall that is played in it.
function frame(svg, answer, width) {
  const arrest = answer.clearance, last = answer.supports[answer.supports.length - 1];
  const ladder = width >= 640 ? 176 : 0;
  const low = Math.min.apply(null, [arrest.lowestPoint, answer.walkingLevel].concat(answer.obstructions.map(function (o) { return o.elevation; })));
  const high = Math.max.apply(null, answer.supports.map(function (s) { return s.z; }).concat([answer.walkingLevel + answer.attachmentHeight * 1.25]));
  const f = { left: 46, right: width - 14 - ladder, top: 40, width: width, height: width < 640 ? 330 : 400, ladder: ladder };
  f.bottom = f.height - 34;
  const room = (high - low) * 0.06 + 0.1;
  const z0 = low - room, z1 = high + room;
  f.x = function (m) { return f.left + (f.right - f.left) * m / last.along; };
  f.z = function (m) { return f.bottom - (f.bottom - f.top) * (m - z0) / (z1 - z0); };
  f.along = function (px) { return (px - f.left) / (f.right - f.left) * last.along; };
  f.length = last.along; f.low = z0; f.high = z1;
  f.times = ((f.bottom - f.top) / (z1 - z0)) / ((f.right - f.left) / last.along);
  svg.setAttribute('viewBox', '0 0 ' + f.width + ' ' + f.height);
  svg.setAttribute('height', f.height);
  return f;
}

function axes(svg, f) {
  const g = el('g', { 'class': 'axis' }, svg);
  steps(fromSi('length', f.low), fromSi('length', f.high), 7).forEach(function (v) {
    const y = f.z(toSi('length', v));
    if (y < f.top - 4 || y > f.bottom) { return; }
    el('path', { d: 'M' + f.left + ' ' + y + 'H' + f.right, 'class': 'grid' }, g);
    el('text', { x: f.left - 6, y: y + 4, 'text-anchor': 'end' }, g, String(v).replace('-', '\u2212'));
  });
  steps(0, fromSi('length', f.length), f.width < 640 ? 5 : 9).forEach(function (v) {
    el('text', { x: f.x(toSi('length', v)), y: f.bottom + 16, 'text-anchor': 'middle' }, g, String(v));
  });
  el('text', { x: f.left - 6, y: 14, 'text-anchor': 'start' }, g, 'elevation, ' + unitOf('length'));
  el('text', { x: f.right, y: f.bottom + 30, 'text-anchor': 'end' }, g,
    'along the line, ' + unitOf('length') + '; heights drawn ' + f.times.toFixed(1) + ' times');
}

function site(svg, answer, f) {
  const g = el('g', { 'class': 'site' }, svg);
  answer.obstructions.forEach(function (o) {
    const x0 = f.x(Math.max(0, o.from)), x1 = f.x(Math.min(f.length, o.to)), y = f.z(o.elevation);
    el('rect', { x: x0, y: y, width: Math.max(1, x1 - x0), height: Math.max(2, f.bottom - y), 'class': 'obstruction' }, g);
    el('text', { x: x0 + 6, y: Math.min(f.bottom - 4, y + 14), 'class': 'note' }, g, 'obstruction ' + withUnit('length', o.elevation));
  });
  const y = f.z(answer.walkingLevel);
  el('path', { d: 'M' + f.left + ' ' + y + 'H' + f.right, 'class': 'walk' }, g);
  el('text', { x: f.right - 4, y: y + 13, 'text-anchor': 'end', 'class': 'note' }, g, 'walking level');
  names(g, answer, f);
  answer.supports.forEach(function (s, i) {
    const x = f.x(s.along), end = i === 0 || i === answer.supports.length - 1;
    el('path', { d: 'M' + x + ' ' + f.z(s.z) + 'V' + Math.max(f.z(s.z) + 6, y), 'class': 'post' }, g);
    el(end ? 'rect' : 'circle', end ? { x: x - 5, y: f.z(s.z) - 5, width: 10, height: 10, 'class': 'anchor' } : { cx: x, cy: f.z(s.z), r: 4.5, 'class': 'anchor' }, g);
  });
}

// The names of the supports above the line: the ends first, then every one that has room.
function names(g, answer, f) {
  const last = answer.supports.length - 1, taken = [];
  [0, last].concat(answer.supports.map(function (s, i) { return i; }).slice(1, -1)).forEach(function (i) {
    const s = answer.supports[i], most = Math.max(8, Math.floor((f.right - f.left) / 7 / 3));
    const name = s.id.length > most ? s.id.slice(0, most - 1) + '…' : s.id, wide = 6.8 * name.length, x = f.x(s.along);
    const from = i === 0 ? x : i === last ? x - wide : x - wide / 2;
    if (taken.some(function (t) { return from < t[1] + 6 && from + wide > t[0] - 6; })) { return; }
    taken.push([from, from + wide]);
    el('text', { x: x, y: f.top - 10, 'text-anchor': i === 0 ? 'start' : i === last ? 'end' : 'middle' }, g, name);
  });
}

const SHORT = {
  'line at the station before the fall': 'line before', 'descent of the line': 'descent', 'taut length of the connecting subsystem': 'connection',
  'harness attachment to feet': 'worker', 'harness stretch': 'harness'
};

// The clearance account as a ladder at the same heights.
function ladder(svg, arrest, f) {
  if (!f.ladder) { return; }
  const g = el('g', { 'class': 'ladder' }, svg), x = f.right + 22;
  let lowest = f.top - 14;
  el('path', { d: 'M' + x + ' ' + f.z(arrest.rows[0].elevation) + 'V' + f.z(arrest.rows[arrest.rows.length - 1].elevation) }, g);
  arrest.rows.forEach(function (row) {
    const y = f.z(row.elevation);
    lowest = Math.max(lowest + 13, y + 4);
    el('path', { d: 'M' + (x - 5) + ' ' + y + 'H' + (x + 5) + 'L' + (x + 12) + ' ' + (lowest - 4) }, g);
    const name = SHORT[row.item] || row.item;
    const text = el('text', { x: x + 15, y: lowest }, g, (name.length > 12 ? name.slice(0, 11) + '…' : name) + ' ' + withUnit('length', row === arrest.rows[0] ? row.elevation : row.value));
    el('title', {}, text, row.item + ': ' + withUnit('length', row.value) + ', at ' + withUnit('length', row.elevation));
  });
}

function drawElevation(svg, answer, side) {
  const width = Math.max(300, svg.parentNode.clientWidth);
  svg.textContent = '';
  const arrest = answer[side], f = frame(svg, answer, width);
  axes(svg, f);
  site(svg, answer, f);
  el('path', { d: pathOf(arrest.before, f.x, f.z), 'class': 'cable before' }, svg);
  el('path', { d: pathOf(arrest.peak, f.x, f.z), 'class': 'cable peak' }, svg);
  const a = arrest.attachmentBefore, p = arrest.attachmentAtPeak, h = answer.attachmentHeight;
  el('path', { d: 'M' + f.x(a[0]) + ' ' + f.z(a[1]) + 'L' + f.x(a[0]) + ' ' + f.z(answer.walkingLevel + h), 'class': 'lanyard before' }, svg);
  figure(svg, f.x(a[0]), f.z(answer.walkingLevel), f.z(answer.walkingLevel + h), 'before');
  el('path', { d: 'M' + f.x(p[0]) + ' ' + f.z(p[1]) + 'L' + f.x(p[0]) + ' ' + f.z(arrest.lowestPoint + h), 'class': 'lanyard peak' }, svg);
  figure(svg, f.x(p[0]), f.z(arrest.lowestPoint), f.z(arrest.lowestPoint + h), 'peak');
  el('circle', { cx: f.x(a[0]), cy: f.z(a[1]), r: 11, 'class': 'handle' }, svg);
  ladder(svg, arrest, f);
  return f;
}

// A picture as a file of its own: its colours go with it.
function svgFile(svg) {
  const clone = svg.cloneNode(true), box = svg.viewBox.baseVal;
  clone.setAttribute('xmlns', SVG);
  clone.setAttribute('width', box.width);
  clone.insertBefore(el('rect', { width: '100%', height: '100%', fill: '#ffffff' }), clone.firstChild);
  const style = el('style', {}, null, 'text{font:12px sans-serif;fill:#333}.grid{stroke:#ddd}.walk{stroke:#888;stroke-width:2}.post{stroke:#888;stroke-width:3}'
    + '.anchor{fill:#333}.obstruction{fill:#c9a27a;fill-opacity:.45}.cable,.lanyard,.curve,.ladder path{fill:none;stroke:#1c4f73;stroke-width:2}'
    + '.before{stroke-dasharray:5 4;opacity:.7}.person path{fill:none;stroke:#a03a1c;stroke-width:2}.person circle{fill:#a03a1c}.person.before{opacity:.45}'
    + '.handle{fill:none;stroke:#a03a1c}.ladder path{stroke-width:1}.present{stroke:#a03a1c;stroke-dasharray:3 3}.zero{stroke:#888}'
    + '.kept0{stroke:#8a5a00}.kept1{stroke:#5b3f94}.kept2{stroke:#2d6b3c}.kept3{stroke:#7a2f5b}');
  clone.insertBefore(style, clone.firstChild);
  return new XMLSerializer().serializeToString(clone);
}
