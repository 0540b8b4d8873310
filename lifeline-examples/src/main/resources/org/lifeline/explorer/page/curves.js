'use strict';
// A curve of a result over a variable, and those that are kept beside it.
const POINTS = 60;

function drawCurves(svg, curves, axis) {
  const width = Math.max(300, svg.parentNode.clientWidth), height = 300;
  svg.textContent = '';
  svg.setAttribute('viewBox', '0 0 ' + width + ' ' + height);
  svg.setAttribute('height', height);
  const f = { left: 58, right: width - 14, top: 26, bottom: height - 40 };
  const xs = [], ys = [];
  curves.forEach(function (c) {
    c.points.forEach(function (p) { if (p && isFinite(p[1])) { xs.push(fromSi(axis.kind, p[0])); ys.push(fromSi(axis.resultKind, p[1])); } });
  });
  if (!ys.length) {
    el('text', { x: f.left, y: 60 }, svg, axis.nothing || 'Nothing to draw yet.');
    return;
  }
  let x0 = Math.min.apply(null, xs), x1 = Math.max.apply(null, xs), y0 = Math.min.apply(null, ys), y1 = Math.max.apply(null, ys);
  const pad = Math.max((y1 - y0) * 0.08, Math.abs(y1) * 0.01, 1e-9);
  y0 = y0 >= 0 && y0 < 0.4 * y1 ? 0 : y0 - pad;
  y1 += pad;
  if (x1 <= x0) { x1 = x0 + 1; }
  const x = function (v) { return f.left + (f.right - f.left) * (v - x0) / (x1 - x0); };
  const y = function (v) { return f.bottom - (f.bottom - f.top) * (v - y0) / (y1 - y0); };
  const g = el('g', { 'class': 'axis' }, svg);
  steps(y0, y1, 6).forEach(function (v) {
    el('path', { d: 'M' + f.left + ' ' + y(v) + 'H' + f.right, 'class': 'grid' }, g);
    el('text', { x: f.left - 6, y: y(v) + 4, 'text-anchor': 'end' }, g, String(v).replace('-', '\u2212'));
  });
  steps(x0, x1, width < 500 ? 5 : 9).forEach(function (v) { el('text', { x: x(v), y: f.bottom + 17, 'text-anchor': 'middle' }, g, String(v).replace('-', '\u2212')); });
  el('text', { x: f.left - 50, y: 14 }, g, axis.resultLabel + (unitOf(axis.resultKind) ? ', ' + unitOf(axis.resultKind) : ''));
  el('text', { x: f.right, y: f.bottom + 33, 'text-anchor': 'end' }, g, axis.label + (unitOf(axis.kind) ? ', ' + unitOf(axis.kind) : ''));
  if (isFinite(axis.present)) {
    const at = x(fromSi(axis.kind, axis.present));
    if (at >= f.left - 1 && at <= f.right + 1) { el('path', { d: 'M' + at + ' ' + f.top + 'V' + f.bottom, 'class': 'present' }, svg); }
  }
  curves.forEach(function (c, n) {
    let d = '', down = false;
    c.points.forEach(function (p) {
      if (!p || !isFinite(p[1])) { down = false; return; }
      d += (down ? 'L' : 'M') + x(fromSi(axis.kind, p[0])).toFixed(1) + ' ' + y(fromSi(axis.resultKind, p[1])).toFixed(1);
      down = true;
    });
    const line = el('path', { d: d, 'class': 'curve ' + (c.kept ? 'kept' + (n % 4) : 'live') + (c.inTime ? ' dots' : '') }, svg);
    el('title', {}, line, c.name);
    if (c.inTime) {
      c.points.forEach(function (p) { if (p && isFinite(p[1])) { el('circle', { cx: x(fromSi(axis.kind, p[0])), cy: y(fromSi(axis.resultKind, p[1])), r: 3.5, 'class': 'dot' }, svg); } });
    }
  });
}

// Histories of one fall, each over the same time, with a mark that moves along.
function drawHistory(svg, series, times, kind, label) {
  const width = Math.max(300, svg.parentNode.clientWidth), height = 150;
  svg.textContent = '';
  svg.setAttribute('viewBox', '0 0 ' + width + ' ' + height);
  svg.setAttribute('height', height);
  const left = 58, right = width - 14, top = 22, bottom = height - 24, end = times[times.length - 1];
  let most = 1e-9;
  series.forEach(function (s) { s.values.forEach(function (v) { most = Math.max(most, fromSi(kind, v)); }); });
  const x = function (t) { return left + (right - left) * t / end; };
  const y = function (v) { return bottom - (bottom - top) * v / (most * 1.05); };
  const g = el('g', { 'class': 'axis' }, svg);
  steps(0, most, 3).forEach(function (v) {
    el('path', { d: 'M' + left + ' ' + y(v) + 'H' + right, 'class': 'grid' }, g);
    el('text', { x: left - 6, y: y(v) + 4, 'text-anchor': 'end' }, g, String(v));
  });
  steps(0, end, 6).forEach(function (v) { el('text', { x: x(v), y: bottom + 16, 'text-anchor': 'middle' }, g, String(v)); });
  el('text', { x: left - 50, y: 13 }, g, label + ', ' + unitOf(kind) + (width < 500 ? '' : ', over time in s'));
  series.forEach(function (s, n) {
    let d = '';
    const every = Math.max(1, Math.floor(s.values.length / (2 * width)));
    for (let i = 0; i < s.values.length; i += every) {
      let v = 0;
      for (let j = i; j < Math.min(i + every, s.values.length); j++) { v = Math.max(v, s.values[j]); }
      d += (i ? 'L' : 'M') + x(times[i]).toFixed(1) + ' ' + y(fromSi(kind, v)).toFixed(1);
    }
    el('title', {}, el('path', { d: d, 'class': 'curve ' + (n ? 'kept' + n : 'live') }, svg), s.name);
    el('text', { x: right - 4 - 130 * (series.length - 1 - n), y: 13, 'text-anchor': 'end', 'class': 'key ' + (n ? 'key' + n : 'keylive') }, svg, s.name);
  });
  const mark = el('path', { 'class': 'present' }, svg);
  return function (t) { mark.setAttribute('d', 'M' + x(t) + ' ' + top + 'V' + bottom); };
}
