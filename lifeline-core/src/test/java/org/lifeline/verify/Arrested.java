package org.lifeline.verify;

import java.util.List;
import java.util.Set;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.testing.ArrestCase;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.StateNumbers;

/** Numbers of arrests with one of them changed, and the checks that then fail. */
final class Arrested {
    private Arrested() {}

    static ArrestNumbers numbers(ArrestCase each) {
        return ArrestNumbers.of(each.solve());
    }

    static Set<Check> failed(ArrestNumbers arrest) {
        StateNumbers installed =
                StateNumbers.of(Statics.withDefaults().solve(arrest.before().line(), List.of()));
        return Solved.failures(Verifier.withDefaults().reportArrest(arrest, installed));
    }

    static ArrestNumbers energy(ArrestNumbers a, String row, double more) {
        EnergyAccount e = a.energy();
        double old =
                switch (row) {
                    case "fall" -> e.fall();
                    case "cable" -> e.cable();
                    case "hanging" -> e.hanging();
                    case "connection" -> e.connection();
                    case "friction" -> e.friction();
                    case "inlineAbsorbers" -> e.inlineAbsorbers();
                    case "anchors" -> e.anchors();
                    default -> throw new IllegalArgumentException(row);
                };
        return Changed.with(a, "energy", Changed.with(e, row, old + more * e.fall()));
    }

    static ArrestNumbers distance(ArrestNumbers a, String name, double more) {
        ArrestNumbers.Distances d = a.distances();
        double old =
                switch (name) {
                    case "sag" -> d.sag();
                    case "lineDescent" -> d.lineDescent();
                    case "loadX" -> d.loadX();
                    case "totalFallDistance" -> d.totalFallDistance();
                    default -> throw new IllegalArgumentException(name);
                };
        return Changed.with(a, "distances", Changed.with(d, name, old + more));
    }
}
