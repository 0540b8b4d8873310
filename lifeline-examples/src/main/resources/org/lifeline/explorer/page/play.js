'use strict';
// The fall in time, as the library computed it, drawn at a share of real time.
const player = { motion: null, time: 0, running: false, last: 0, marks: [] };

function startMotion(motion, answer) {
  player.motion = motion;
  player.answer = answer;
  player.time = 0;
  document.getElementById('played').hidden = false;
  const slider = document.getElementById('time');
  slider.disabled = false;
  slider.max = motion.times[motion.times.length - 1];
  const first = motion.supports[0], last = motion.supports[motion.supports.length - 1];
  player.marks = [
    drawHistory(document.getElementById('history-force'), [{ name: 'arrest force', values: motion.force }], motion.times, 'force', 'Force on the worker'),
    drawHistory(document.getElementById('history-tension'),
      [{ name: 'at ' + first.id, values: first.tensionBehind }, { name: 'at ' + last.id, values: last.tensionBefore }], motion.times, 'force', 'Tension at the ends')
  ];
  drawMoment();
}

function drawMoment() {
  const m = player.motion, a = player.answer, svg = document.getElementById('scene');
  if (!m) { return; }
  const step = m.times[1] - m.times[0];
  const i = Math.max(0, Math.min(m.times.length - 1, Math.round(player.time / step)));
  svg.textContent = '';
  const f = frame(svg, a, Math.max(300, svg.parentNode.clientWidth));
  axes(svg, f);
  site(svg, a, f);
  let d = '', put = false;
  a.supports.forEach(function (s, n) {
    if (!put && s.along > m.lineAlong[i] && n > 0) { d += 'L' + f.x(m.lineAlong[i]) + ' ' + f.z(m.lineZ[i]); put = true; }
    d += (n ? 'L' : 'M') + f.x(s.along) + ' ' + f.z(s.z);
  });
  el('path', { d: d, 'class': 'cable peak' }, svg);
  const x = f.x(m.lineAlong[i]), harness = m.workerZ[i];
  el('path', { d: 'M' + x + ' ' + f.z(m.lineZ[i]) + 'L' + x + ' ' + f.z(harness), 'class': m.force[i] > 0 ? 'lanyard peak' : 'lanyard before' }, svg);
  figure(svg, x, f.z(harness - a.attachmentHeight), f.z(harness), 'peak');
  const end = m.supports[m.supports.length - 1];
  el('text', { x: f.right - 4, y: f.top + 14, 'text-anchor': 'end' }, svg, 'force ' + withUnit('force', m.force[i]) + ', tension ' + withUnit('force', Math.max(m.supports[0].tensionBehind[i], end.tensionBefore[i])));
  player.marks.forEach(function (mark) { mark(m.times[i]); });
  document.getElementById('time').value = player.time;
  document.getElementById('clock').textContent = m.times[i].toFixed(3) + ' s';
}

function tick(now) {
  if (!player.running) { return; }
  player.time += Math.min(100, now - player.last) / 1000 / Number(document.getElementById('speed').value);
  player.last = now;
  if (player.time >= player.motion.times[player.motion.times.length - 1]) { stopPlay(); }
  drawMoment();
  if (player.running) { requestAnimationFrame(tick); }
}

function stopPlay() {
  player.running = false;
  document.getElementById('play').textContent = 'Play';
}

function runPlay() {
  if (player.time >= player.motion.times[player.motion.times.length - 1] - 1e-6) { player.time = 0; }
  player.running = true;
  player.last = performance.now();
  document.getElementById('play').textContent = 'Stop';
  requestAnimationFrame(tick);
}
