'use strict';
// What can be turned in a design. Every variable reads and writes the design file itself, so that nothing is kept twice.

function copyOf(design) { return JSON.parse(JSON.stringify(design)); }

function xyz(support) { return support.position.map(siOf); }

function runOf(design, span) {
  const a = xyz(design.supports[span - 1]), b = xyz(design.supports[span]);
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

function spansOf(design) { return design.supports.length - 1; }

function placesOf(design) {
  const list = [];
  (design.falls || []).forEach(function (f) {
    list.push(f);
    (f.hanging || []).forEach(function (h) { list.push(h); });
  });
  return list;
}

// Lengthens a span: what lies behind it moves along, and falls stay at the same share of their span.
function setRun(design, span, run) {
  const a = xyz(design.supports[span - 1]), b = xyz(design.supports[span]);
  const old = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const dx = (b[0] - a[0]) / old * (run - old), dy = (b[1] - a[1]) / old * (run - old);
  for (let i = span; i < design.supports.length; i++) {
    const p = xyz(design.supports[i]);
    design.supports[i].position[0] = quantity('length', p[0] + dx);
    design.supports[i].position[1] = quantity('length', p[1] + dy);
  }
  placesOf(design).forEach(function (place) {
    if (place.span === span && place.station !== undefined) {
      place.station = quantity('length', siOf(place.station) * run / old);
    }
  });
}

function setSpans(design, count) {
  const old = spansOf(design), runs = [];
  for (let i = 1; i <= old; i++) { runs.push(runOf(design, i)); }
  const mean = runs.reduce(function (x, y) { return x + y; }, 0) / old;
  const first = design.supports[0], last = design.supports[old], posts = design.supports.slice(1, old);
  const z = xyz(first), end = xyz(last);
  while (posts.length > count - 1) { posts.pop(); }
  const taken = {};
  design.supports.forEach(function (s) { taken[s.id] = true; });
  while (posts.length < count - 1) {
    const post = posts.length ? copyOf(posts[posts.length - 1]) : { type: 'intermediate', position: [], passage: { friction: 0.1 } };
    let n = posts.length + 1;
    while (taken['post ' + n]) { n++; }
    post.id = 'post ' + n;
    taken[post.id] = true;
    posts.push(post);
  }
  const all = [first].concat(posts, [last]);
  all.forEach(function (s, i) {
    s.position = [quantity('length', z[0] + mean * i), quantity('length', z[1]), quantity('length', z[2] + (end[2] - z[2]) * i / count)];
  });
  design.supports = all;
  placesOf(design).forEach(function (place) {
    if (place.span !== undefined) {
      const share = siOf(place.station) / (runs[place.span - 1] || mean);
      place.span = Math.min(place.span, count);
      place.station = quantity('length', Math.min(0.999, share) * mean);
    } else if (!all.some(function (s) { return s.id === place.support; })) {
      delete place.support;
      place.span = 1;
      place.station = quantity('length', mean / 2);
    }
  });
  const gone = [];
  design.criteria = (design.criteria || []).filter(function (c) {
    const stays = typeof c === 'string' || !c.support || all.some(function (s) { return s.id === c.support; });
    if (!stays) { gone.push(c.id); }
    return stays;
  });
  if (!design.criteria.length) { delete design.criteria; }
  return gone.length ? 'Left out, because its support is gone: ' + gone.join(', ') + '.' : '';
}

function fallOf(design, view) { return (design.falls || [])[view.fall]; }

function workerOf(design, view) {
  const fall = fallOf(design, view);
  const id = fall && fall.fallers ? fall.fallers[0] : undefined;
  return design.workers.find(function (w) { return w.id === id; }) || design.workers[0];
}

function connectionKind(worker) {
  const c = worker.connection;
  return c.retractable ? 'retractable' : c.absorber ? 'absorber' : c.stiffness ? 'plain' : 'curve';
}

// Distance along the whole line of the fall that is looked at, and back.
function alongOf(design, view) {
  const fall = fallOf(design, view);
  if (!fall) { return NaN; }
  let sum = 0;
  const at = fall.support === undefined ? fall.span : design.supports.findIndex(function (s) { return s.id === fall.support; }) + 1;
  for (let i = 1; i < at; i++) { sum += runOf(design, i); }
  return sum + (fall.support === undefined ? siOf(fall.station) : 0);
}

function lengthOf(design) {
  let sum = 0;
  for (let i = 1; i <= spansOf(design); i++) { sum += runOf(design, i); }
  return sum;
}

function setAlong(design, view, along) {
  const fall = fallOf(design, view);
  let left = Math.max(0, along), span = 1;
  while (span < spansOf(design) && left > runOf(design, span)) { left -= runOf(design, span); span++; }
  const run = runOf(design, span), least = Math.min(0.05, run / 10);
  delete fall.support;
  fall.span = span;
  fall.station = quantity('length', Math.max(least, Math.min(run - least, left)));
}

function number(id, group, label, kind, range, get, set) {
  return { id: id, group: group, label: label, kind: kind, min: range[0], max: range[1], get: get, set: set };
}

function plainField(id, group, label, kind, range, holder, key) {
  return number(id, group, label, kind, range,
    function (d, v) { const h = holder(d, v); return h && h[key] !== undefined ? siOf(h[key]) : NaN; },
    function (d, v, si) { holder(d, v)[key] = quantity(kind, si); });
}

function choice(id, group, label, options, get, set) {
  return { id: id, group: group, label: label, options: options, get: get, set: set };
}

const CLASSES = ['6x7 fibre core', '6x7 steel core', '7x7', '6x19 fibre core', '6x19 steel core', '6x36 fibre core', '6x36 steel core',
  '6x19M fibre core', '6x19M steel core', '7x19', '18x7 fibre core', '18x7 steel core'];

function endVariables(list, index, name) {
  const group = 'Ends';
  const end = function (d) { return d.supports[index === 0 ? 0 : d.supports.length - 1]; };
  list.push(choice('end' + index + '.kind', group, name + ' anchor', [['rigid', 'rigid'], ['spring', 'yields along the line']],
    function (d) { return end(d).stiffness ? 'spring' : 'rigid'; },
    function (d, v, value) { if (value === 'rigid') { delete end(d).stiffness; } else { end(d).stiffness = { x: '500 kN/m' }; } }));
  list.push(number('end' + index + '.stiffness', group, name + ' anchor, stiffness along x', 'stiffness', [20e3, 2e6],
    function (d) { return end(d).stiffness && end(d).stiffness.x ? siOf(end(d).stiffness.x) : NaN; },
    function (d, v, si) { end(d).stiffness = Object.assign({}, end(d).stiffness, { x: quantity('stiffness', si) }); }));
  list.push(choice('end' + index + '.inline', group, name + ' in-line absorber', [['no', 'none'], ['yes', 'fitted']],
    function (d) { return end(d).inlineAbsorber ? 'yes' : 'no'; },
    function (d, v, value) {
      if (value === 'no') { delete end(d).inlineAbsorber; } else {
        end(d).inlineAbsorber = { curve: [['0 m', '8 kN'], ['0.8 m', '8 kN']], initialStiffness: '8 MN/m', stopStiffness: '220 kN/m' };
      }
    }));
  list.push(number('end' + index + '.inlineForce', group, name + ' in-line absorber, force', 'force', [2e3, 20e3],
    function (d) { const a = end(d).inlineAbsorber; return a ? siOf(a.curve[0][1]) : NaN; },
    function (d, v, si) {
      const curve = end(d).inlineAbsorber.curve, before = siOf(curve[0][1]);
      curve.forEach(function (c) { c[1] = quantity('force', siOf(c[1]) * si / before); });
    }));
  list.push(number('end' + index + '.inlineLength', group, name + ' in-line absorber, extension', 'length', [0.1, 2],
    function (d) { const a = end(d).inlineAbsorber; return a ? siOf(a.curve[a.curve.length - 1][0]) : NaN; },
    function (d, v, si) {
      const curve = end(d).inlineAbsorber.curve, before = siOf(curve[curve.length - 1][0]);
      curve.forEach(function (c) { c[0] = quantity('length', siOf(c[0]) * si / before); });
    }));
}

function workerVariables(list) {
  const g = 'Worker and connection';
  const connection = function (d, v) { return workerOf(d, v).connection; };
  const absorber = function (d, v) { return connection(d, v).absorber; };
  const device = function (d, v) { return connection(d, v).retractable; };
  const brake = function (d, v) { return device(d, v) ? device(d, v).brakeForce : undefined; };
  list.push(plainField('mass', g, 'Mass with tools', 'mass', [50, 150], workerOf, 'mass'));
  list.push(plainField('walkingLevel', g, 'Walking level', 'length', [-20, 30], workerOf, 'walkingLevel'));
  list.push(plainField('attachmentHeight', g, 'Harness attachment above the feet', 'length', [0.9, 1.8], workerOf, 'attachmentHeight'));
  list.push(choice('attachment', g, 'On the line', [['free-running', 'runs along the cable'], ['gripped', 'grips the cable']],
    function (d, v) { return workerOf(d, v).attachment; }, function (d, v, value) { workerOf(d, v).attachment = value; }));
  list.push(choice('connection', g, 'Connection',
    [['absorber', 'lanyard with absorber'], ['retractable', 'self-retracting'], ['plain', 'lanyard without absorber'], ['curve', 'given curve']],
    function (d, v) { return connectionKind(workerOf(d, v)); },
    function (d, v, value) {
      const made = {
        absorber: { tautLength: '1.8 m', absorber: { clearanceForce: '3.2 kN', maximumForce: '6 kN', maximumExtension: '1.2 m', initialStiffness: '100 kN/m', stopStiffness: '200 kN/m' } },
        retractable: { retractable: { lockDistance: '0.6 m', brakeForce: { clearance: '2.6 kN', maximum: '4 kN' }, maximumExtension: '1.4 m', initialStiffness: '80 kN/m', stopStiffness: '200 kN/m' } },
        plain: { tautLength: '1.8 m', stiffness: '40 kN/m' },
        curve: { tautLength: '1.8 m', loadingCurve: [['0 m', '0 kN'], ['0.05 m', '5 kN'], ['1.25 m', '5 kN']], stopStiffness: '200 kN/m' }
      };
      workerOf(d, v).connection = made[value];
    }));
  list.push(plainField('tautLength', g, 'Lanyard, taut length', 'length', [0.3, 2.5], connection, 'tautLength'));
  list.push(plainField('plainStiffness', g, 'Lanyard, stiffness', 'stiffness', [5e3, 200e3], connection, 'stiffness'));
  list.push(plainField('maximumForce', g, 'Absorber, highest force', 'force', [2.5e3, 10e3], absorber, 'maximumForce'));
  list.push(plainField('clearanceForce', g, 'Absorber, lowest force', 'force', [1.5e3, 8e3], absorber, 'clearanceForce'));
  list.push(plainField('extension', g, 'Absorber, extension', 'length', [0.3, 2], absorber, 'maximumExtension'));
  list.push(plainField('lockDistance', g, 'Lock-up distance', 'length', [0.05, 1.4], device, 'lockDistance'));
  list.push(plainField('brakeMaximum', g, 'Brake, highest force', 'force', [2e3, 8e3], brake, 'maximum'));
  list.push(plainField('brakeClearance', g, 'Brake, lowest force', 'force', [1.5e3, 8e3], brake, 'clearance'));
  list.push(plainField('brakeExtension', g, 'Brake, extension', 'length', [0.3, 2], device, 'maximumExtension'));
}

function lineVariables(list, design) {
  const g = 'Line';
  list.push(number('spans', g, 'Number of spans', 'count', [1, 8], spansOf, function (d, v, n) { return setSpans(d, Math.round(n)); }));
  list.push(number('run.all', g, spansOf(design) > 1 ? 'Length of every span' : 'Length of the span', 'length', [3, 40],
    function (d) { return lengthOf(d) / spansOf(d); },
    function (d, v, si) { for (let i = 1; i <= spansOf(d); i++) { setRun(d, i, si); } }));
  for (let i = 1; spansOf(design) > 1 && i <= spansOf(design); i++) {
    list.push(number('run.' + i, g, 'Length of span ' + i, 'length', [2, 40],
      function (d) { return i <= spansOf(d) ? runOf(d, i) : NaN; }, function (d, v, si) { setRun(d, i, si); }));
  }
  design.supports.forEach(function (s, i) {
    list.push(number('z.' + i, g, 'Elevation of ' + s.id, 'length', [Math.floor(siOf(s.position[2])) - 5, Math.ceil(siOf(s.position[2])) + 5],
      function (d) { return d.supports[i] ? siOf(d.supports[i].position[2]) : NaN; },
      function (d, v, si) { d.supports[i].position[2] = quantity('length', si); }));
  });
  if (spansOf(design) < 2) { return; }
  const posts = function (d) { return d.supports.slice(1, -1); };
  list.push(choice('passage', g, 'Cable at the posts', [['free', 'runs freely'], ['friction', 'runs against friction'], ['clamped', 'clamped']],
    function (d) { const p = (posts(d)[0] || {}).passage; return p && p.friction !== undefined ? 'friction' : p; },
    function (d, v, value) { posts(d).forEach(function (s) { s.passage = value === 'friction' ? { friction: 0.1 } : value; }); }));
  list.push(number('friction', g, 'Friction at the posts', 'number', [0, 0.6],
    function (d) { const p = (posts(d)[0] || {}).passage; return p && p.friction !== undefined ? p.friction : NaN; },
    function (d, v, value) { posts(d).forEach(function (s) { s.passage = { friction: Number(plain(value)) }; }); }));
}

function cableVariables(list) {
  const g = 'Cable and tension';
  const cable = function (d) { return d.cable; };
  list.push(choice('cable.how', g, 'Cable given by', [['numbers', 'stiffness EA and mass'], ['class', 'rope class and diameter'], ['curve', 'load–elongation curve']],
    function (d) { return d.cable.ropeClass ? 'class' : d.cable.loadElongation ? 'curve' : 'numbers'; },
    function (d, v, value) {
      const kept = { name: 'cable', thermalExpansion: d.cable.thermalExpansion || '12e-6 /K', terminationEfficiency: d.cable.terminationEfficiency || 0.9 };
      const made = {
        numbers: { diameter: '10 mm', massPerLength: '0.41 kg/m', axialStiffness: '3.3 MN', minimumBreakingStrength: '58 kN' },
        class: { ropeClass: '7x19', diameter: '10 mm', tensileGrade: '1770 N/mm²', elasticModulus: '80 GPa' },
        curve: { diameter: '11 mm', massPerLength: '0.08 kg/m', loadElongation: [['0 %', '0 kN'], ['2 %', '3 kN'], ['5 %', '12 kN'], ['9 %', '30 kN']], minimumBreakingStrength: '30 kN' }
      };
      d.cable = Object.assign(kept, made[value]);
      d.cable.name = value === 'class' ? d.cable.ropeClass : value === 'curve' ? 'fibre rope' : 'cable';
    }));
  list.push(choice('cable.class', g, 'Rope class', CLASSES.map(function (c) { return [c, c]; }),
    function (d) { return d.cable.ropeClass; }, function (d, v, value) { d.cable.ropeClass = value; d.cable.name = value; }));
  list.push(plainField('diameter', g, 'Diameter', 'small', [6e-3, 20e-3], cable, 'diameter'));
  list.push(plainField('modulus', g, 'Modulus of the rope', 'stress', [40e9, 160e9], cable, 'elasticModulus'));
  list.push(plainField('EA', g, 'Axial stiffness EA', 'stretch', [0.05e6, 12e6], cable, 'axialStiffness'));
  list.push(plainField('massPerLength', g, 'Mass per length', 'perLength', [0.02, 1.2], cable, 'massPerLength'));
  list.push(plainField('strength', g, 'Breaking strength', 'force', [10e3, 200e3], cable, 'minimumBreakingStrength'));
  const installed = function (d) { return d.installed; };
  list.push(choice('installed.how', g, 'Installed by', [['pretension', 'pretension'], ['initialSag', 'sag of a span'], ['other', 'as in the file']],
    function (d) { return d.installed.pretension !== undefined ? 'pretension' : d.installed.initialSag !== undefined ? 'initialSag' : 'other'; },
    function (d, v, value) {
      const t = d.installed.temperature;
      if (value === 'pretension') { d.installed = { pretension: '1.2 kN' }; }
      if (value === 'initialSag') { d.installed = { initialSag: quantity('length', runOf(d, 1) / 100), span: 1 }; }
      if (t !== undefined) { d.installed.temperature = t; }
    }));
  list.push(plainField('pretension', g, 'Pretension', 'force', [100, 8e3], installed, 'pretension'));
  list.push(plainField('sag', g, 'Initial sag', 'length', [0.005, 1], installed, 'initialSag'));
  list.push(plainField('installTemperature', g, 'Temperature at installation', 'temperature', [-30, 45], installed, 'temperature'));
}

function siteVariables(list) {
  const g = 'Fall and clearance';
  list.push(number('place', g, 'Place of the fall along the line', 'length', [0, NaN], alongOf,
    function (d, v, si) { setAlong(d, v, si); }));
  const first = function (d) { const c = d.clearance || {}; return (c.obstructions || [])[0]; };
  list.push(number('obstruction', g, 'Elevation of the obstruction', 'length', [-20, 30],
    function (d) { return first(d) ? siOf(first(d).elevation) : NaN; },
    function (d, v, si) { first(d).elevation = quantity('length', si); }));
  const clearance = function (d) { return d.clearance; };
  list.push(plainField('harnessStretch', g, 'Harness stretch', 'length', [0, 0.6], clearance, 'harnessStretch'));
  list.push(plainField('margin', g, 'Margin of safety', 'length', [0, 1.5], clearance, 'margin'));
}

// The variables of a design; one that has no value in it is not shown.
function variables(design, view) {
  const list = [];
  lineVariables(list, design);
  cableVariables(list);
  endVariables(list, 0, 'First');
  endVariables(list, 1, 'Last');
  workerVariables(list);
  siteVariables(list);
  return list.filter(function (x) {
    const value = x.get(design, view);
    if (x.id === 'place') { x.max = lengthOf(design); }
    if (x.options) {
      x.options = x.options.filter(function (o) { return o[0] !== 'other' && o[0] !== 'curve' || o[0] === value || x.id === 'cable.how' || x.id === 'connection'; });
      return value !== undefined;
    }
    return isFinite(value);
  });
}

// What comes out, and whether the larger forces or the larger distances are asked for.
const RESULTS = [
  ['endAnchorLoad', 'End anchor load', 'force', 'maximum'],
  ['postLoad', 'Largest load on a post', 'force', 'maximum'],
  ['maximumTension', 'Largest tension', 'force', 'maximum'],
  ['arrestForce', 'Arrest force on the worker', 'force', 'maximum'],
  ['lineLoad', 'Load on the line', 'force', 'maximum'],
  ['tensionPerForce', 'Tension for each unit of load', 'number', 'maximum'],
  ['sagAngle', 'Flattest angle beside the load', 'angle', 'maximum'],
  ['sag', 'Sag at the load', 'length', 'clearance'],
  ['lineDescent', 'Descent of the line', 'length', 'clearance'],
  ['freeFall', 'Free fall', 'length', 'clearance'],
  ['deployment', 'Deployment', 'length', 'clearance'],
  ['totalFallDistance', 'Total fall distance', 'length', 'clearance'],
  ['requiredBelowLine', 'Clearance needed below the line', 'length', 'clearance'],
  ['margin', 'Clearance left over', 'length', 'clearance']
].map(function (r) { return { id: r[0], label: r[1], kind: r[2], side: r[3] }; });
