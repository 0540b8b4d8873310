package org.lifeline.examples.handover;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import org.lifeline.base.Interval;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.design.installation.ConstructionalStretch;
import org.lifeline.design.installation.CutLength;
import org.lifeline.design.installation.InstallationPlan;
import org.lifeline.design.installation.InstallationRequest;
import org.lifeline.design.installation.InstallationResult;
import org.lifeline.design.installation.ReadingEffect;
import org.lifeline.design.installation.StretchEffect;
import org.lifeline.design.installation.TakeUp;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.LineScope;
import org.lifeline.file.DesignFile;

/** What those need who install a line: lengths to cut, travel of the tensioner, stretch of a new rope, wrong readings. */
public final class InstallationSheet {
    private InstallationSheet() {}

    /**
     * Prints the sheet; where the design asks for none, for −5 to 30 °C and a rope with steel core.
     *
     * @param args a design file, or nothing for the demonstration design
     * @throws IOException if the file cannot be read
     */
    public static void main(String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        InstallationResult r = file.handover()
                .installation()
                .orElse(InstallationPlan.of(new InstallationRequest(
                        Interval.of(-5, 30),
                        InstallationRequest.DRAWN_BY_HAND,
                        InstallationRequest.WITHIN_TEN_PERCENT,
                        Optional.of(ConstructionalStretch.STEEL_CORE))))
                .solve(file.design());
        for (CutLength each : r.lengths()) {
            print("span %d: stress-free cable %.4f m", each.span(), each.unstretched());
        }
        print("in all %.4f m, without terminations and tensioner", r.totalLength());
        for (TakeUp t : r.takeUps()) {
            print(
                    "tensioner at %5.1f °C: from %3.0f N to %4.0f N takes up %5.1f mm (rope %.1f, structure %.1f)",
                    t.temperature(),
                    t.tensions().low(),
                    t.tensions().high(),
                    1000 * t.total(),
                    1000 * t.rope(),
                    1000 * t.structure());
        }
        for (StretchEffect s : r.stretch()) {
            print(
                    "constructional stretch %.3f %%: %4.0f N left, sag %.3f m; take up %.1f mm again",
                    100 * s.stretch(), s.pretension(), s.sag(), 1000 * s.retension());
        }
        print("What another pretension means. %s", LineScope.words(false));
        for (ReadingEffect e : r.readings()) {
            print(
                    "pretension %5.0f N: end anchor %5.2f kN, below the line %.3f m  %s",
                    e.pretension(),
                    e.worst(Quantity.END_ANCHOR_LOAD).orElse(Double.NaN) / 1000,
                    e.worst(Quantity.REQUIRED_BELOW_LINE).orElse(Double.NaN),
                    e.name());
        }
    }

    private static void print(String format, Object... values) {
        System.out.println(String.format(Locale.ROOT, format, values));
    }
}
