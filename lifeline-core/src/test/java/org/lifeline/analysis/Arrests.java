package org.lifeline.analysis;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.analysis.state.SupportReaction;
import org.lifeline.base.Vector3;
import org.lifeline.model.PlausibleLine;

/** Solves plausible lines, and checks of results that every test can make. */
final class Arrests {
    private Arrests() {}

    static ArrestResult solve(PlausibleLine p) {
        return EnergyBalance.withDefaults().withTemperature(p.temperature).solve(p.line(), p.fall());
    }

    /** The line's supports carry its weight and its loads, and nothing else. */
    static void balances(String name, LineEquilibrium e) {
        Vector3 sum = Vector3.ZERO;
        double size = 0;
        for (SupportReaction each : e.supports()) {
            sum = sum.plus(each.vector());
            size = Math.max(size, each.force());
        }
        double down = e.loads().stream().mapToDouble(LoadPosition::force).sum();
        for (SpanState span : e.spans()) {
            for (CablePiece piece : span.pieces()) {
                down += piece.weightPerLength() * piece.unstretchedLength();
            }
        }
        assertThat(sum.x()).as(name).isCloseTo(0, within(1e-9 * size));
        assertThat(sum.y()).as(name).isCloseTo(0, within(1e-9 * size));
        assertThat(sum.z()).as(name).isCloseTo(-down, within(1e-9 * (size + down)));
    }

    /** The energy account closes, and the path work agrees with it where the path was followed. */
    static void closes(String name, ArrestResult a) {
        double fall = a.energy().fall();
        assertThat(a.energy().residual()).as(name + ": energy account").isCloseTo(0, within(1e-8 * fall));
        if (!Double.isNaN(a.pathWork())) {
            assertThat(a.pathWork())
                    .as(name + ": path work")
                    .isCloseTo(a.energy().lineWork(), within(1e-6 * fall));
        }
    }
}
