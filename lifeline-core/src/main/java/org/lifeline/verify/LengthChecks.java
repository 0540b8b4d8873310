package org.lifeline.verify;

import java.util.List;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Where the unstretched length of the cable is: none is lost, spans exchange it by slip, clamps let none pass. */
final class LengthChecks {
    private LengthChecks() {}

    static void check(StateNumbers state, StateNumbers installed, String name, CheckLog log) {
        double total = installed.length();
        log.add(Check.LENGTH, name, Math.abs(state.length() / state.expansion() - total) / total);
        List<SupportReaction> supports = state.supports();
        for (SpanNumbers span : state.spans()) {
            int i = span.number();
            double expected = installed.span(i).length()
                    + supports.get(i).slip()
                    - supports.get(i - 1).slip();
            log.add(
                    Check.SLIP,
                    name + ", span " + i,
                    Math.abs(span.length() / state.expansion() - expected) / state.chord(i));
        }
        for (int i = 0; i < supports.size(); i++) {
            Support s = state.line().supports().get(i);
            if (s.isEnd() || s.passage().kind() == Passage.Kind.CLAMPED) {
                log.add(
                        Check.PASSAGE_CLAMPED,
                        name + ", support " + s.id(),
                        Math.abs(supports.get(i).slip()) / total);
            }
        }
    }
}
