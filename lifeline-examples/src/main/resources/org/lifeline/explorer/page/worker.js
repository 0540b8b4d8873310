// Runs the compiled library beside the page. A message names a question, what it asks with, and a number for the answer.
self.onmessage = function (event) {
  var m = event.data;
  var answer;
  try {
    if (m.ask === 'curve') {
      answer = m.designs.map(function (d) { 
        return JSON.parse(m.side ? exports.side(d, m.fall, m.temperature, m.side === 'clearance') : exports.numbers(d, m.fall, m.temperature));
      });
    } else if (m.ask === 'result') {
      answer = exports.result(m.design, m.motion, m.version, m.commit, m.runtime);
    } else if (m.ask === 'inTime') {
      answer = JSON.parse(exports.inTime(m.design, m.fall, m.temperature, m.clearance, m.refinements));
    } else {
      answer = JSON.parse(exports.arrest(m.design, m.fall, m.temperature));
    }
  } catch (e) {
    answer = { fault: String(e) };
  }
  self.postMessage({ number: m.number, answer: answer });
};
