'use strict';
// Quantities as they stand in a design file: a number and its unit.
const FACTORS = {
  m: 1, mm: 1e-3, cm: 1e-2, ft: 0.3048, in: 0.0254,
  N: 1, kN: 1e3, MN: 1e6, lbf: 4.4482216152605, kip: 4448.2216152605,
  kg: 1, lb: 0.45359237,
  'N/m': 1, 'kN/m': 1e3, 'MN/m': 1e6, 'N/mm': 1e3, 'lbf/ft': 4.4482216152605 / 0.3048, 'lbf/in': 4.4482216152605 / 0.0254,
  'kg/m': 1, 'lb/ft': 0.45359237 / 0.3048,
  Pa: 1, kPa: 1e3, MPa: 1e6, GPa: 1e9, 'N/mm²': 1e6, 'N/mm2': 1e6, psi: 4.4482216152605 / 0.00064516, ksi: 4448.2216152605 / 0.00064516,
  'mm²': 1e-6, 'mm2': 1e-6, 'in²': 0.00064516, 'in2': 0.00064516, 'm²': 1, 'm2': 1,
  J: 1, kJ: 1e3, 's': 1, ms: 1e-3, '°': 1, '%': 0.01, '': 1
};

// How a kind of quantity is shown: unit and decimals in SI and US units.
const KINDS = {
  length: { si: ['m', 3], us: ['ft', 2] },
  small: { si: ['mm', 1], us: ['in', 3] },
  force: { si: ['kN', 2], us: ['lbf', 0] },
  stretch: { si: ['MN', 3], us: ['kip', 0] },
  mass: { si: ['kg', 1], us: ['lb', 1] },
  perLength: { si: ['kg/m', 3], us: ['lb/ft', 3] },
  stiffness: { si: ['kN/m', 0], us: ['lbf/ft', 0] },
  stress: { si: ['GPa', 0], us: ['ksi', 0] },
  temperature: { si: ['°C', 1], us: ['°F', 1] },
  energy: { si: ['J', 0], us: ['J', 0] },
  angle: { si: ['°', 2], us: ['°', 2] },
  number: { si: ['', 2], us: ['', 2] },
  count: { si: ['', 0], us: ['', 0] },
  time: { si: ['s', 3], us: ['s', 3] }
};

let unitSystem = 'si';

function siOf(text) {
  if (typeof text === 'number') { return text; }
  const m = /^\s*([+\-\u2212]?[0-9.]+(?:[eE][+-]?[0-9]+)?)\s*(.*?)\s*$/.exec(String(text));
  if (!m) { return NaN; }
  const value = Number(m[1].replace('\u2212', '-'));
  if (m[2] === '°C' || m[2] === 'degC') { return value; }
  if (m[2] === '°F' || m[2] === 'degF') { return (value - 32) / 1.8; }
  const factor = FACTORS[m[2]];
  return factor === undefined ? NaN : value * factor;
}

function unitOf(kind) { return KINDS[kind][unitSystem][0]; }

function fromSi(kind, si) {
  const unit = unitOf(kind);
  if (unit === '°F') { return si * 1.8 + 32; }
  return unit === '°C' ? si : si / FACTORS[unit];
}

function toSi(kind, shown) {
  const unit = unitOf(kind);
  if (unit === '°F') { return (shown - 32) / 1.8; }
  return unit === '°C' ? shown : shown * FACTORS[unit];
}

function shown(kind, si, more) {
  if (si === undefined || si === null || !isFinite(si)) { return '\u2013'; }
  return fromSi(kind, si).toFixed(KINDS[kind][unitSystem][1] + (more || 0)).replace('-', '\u2212');
}

function withUnit(kind, si) {
  const text = shown(kind, si);
  return text === '\u2013' || !unitOf(kind) ? text : text + '\u00a0' + unitOf(kind);
}

// A number without the dust of binary fractions, for a field or a design file.
function plain(value) { return String(Number(value.toPrecision(12))); }

// A quantity as a design file takes it, in the units that are shown.
function quantity(kind, si) {
  const unit = unitOf(kind);
  return unit === '' ? Number(plain(si)) : plain(fromSi(kind, si)) + ' ' + unit;
}
