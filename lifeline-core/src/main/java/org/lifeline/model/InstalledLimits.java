package org.lifeline.model;

import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.Violation;
import org.lifeline.base.Violations;
import org.lifeline.model.cable.LoadElongation;

/** Installed states that no cable could hang in, or that lie beyond the model: found before anything is solved. */
final class InstalledLimits {
    /**
     * Largest strain at installation of a cable that is given by its stiffness alone [-]. Wire ropes break at 2 to 4 %
     * (common practice, no source); a constant stiffness says nothing beyond. A load–elongation curve says itself how
     * far it holds.
     */
    static final double LARGEST_STRAIN = 0.05;

    /** Largest installed sag over the length of the chord [-]; a lifeline has some per cent. */
    static final double LARGEST_SAG = 1;

    /** Largest unstretched length over the sum of the chords [-]: a catenary that sags by its span has 2.3. */
    static final double LARGEST_LENGTH = 2.5;

    private InstalledLimits() {}

    /** Checks the installed state; {@code parent} is where it was stated. */
    static void check(Lifeline line, String parent, Violations v) {
        Violations found = new Violations();
        switch (line.installed().form()) {
            case PRETENSION -> tension(line, "pretension", found);
            case HORIZONTAL_TENSION -> tension(line, "horizontalTension", found);
            case INITIAL_SAG -> sag(line, found);
            case UNSTRETCHED_LENGTH -> length(line, found);
        }
        v.addAll(found.list(), parent);
    }

    private static void tension(Lifeline line, String path, Violations v) {
        double t = line.installed().value();
        line.cable().terminationStrength().ifPresent(holds -> {
            if (t > holds) {
                v.add(Violation.of(
                                path,
                                GivenValue.number(t, "N"),
                                InputRule.TENSION_ABOVE_STRENGTH,
                                Violations.show(holds, "N"),
                                line.cable().breakingStrength().orElse(0),
                                line.cable().terminationEfficiency())
                        .allowing(AllowedRange.atMost(holds)));
            }
        });
        strain(line, path, t, v);
    }

    private static void strain(Lifeline line, String path, double tension, Violations v) {
        LoadElongation law = line.cable().elongation();
        double strain = law.strain(tension);
        if (law.isStiffnessAlone() && strain > LARGEST_STRAIN) {
            v.add(
                    path,
                    GivenValue.number(line.installed().value(), unit(line.installed())),
                    InputRule.STRAIN_AT_INSTALLATION,
                    Violations.show(100 * strain, "%"),
                    Violations.show(100 * LARGEST_STRAIN, "%"));
        }
    }

    private static void sag(Lifeline line, Violations v) {
        int span = line.installed().span();
        double chord = chord(line, span);
        double sag = line.installed().value();
        if (sag > LARGEST_SAG * chord) {
            v.add(Violation.of(
                            "initialSag",
                            GivenValue.number(sag, "m"),
                            InputRule.SAG_ABOVE_SPAN,
                            Violations.show(chord, "m"))
                    .allowing(AllowedRange.above(0).upTo(chord)));
        } else {
            double run = line.run(span);
            // The parabola: H = w · chord · run / (8 sag), a few per cent below the catenary at the largest sag.
            strain(line, "initialSag", line.weightPerLength() * chord * run / (8 * sag), v);
        }
    }

    private static void length(Lifeline line, Violations v) {
        double chords = 0;
        for (int i = 1; i <= line.spans(); i++) {
            chords += chord(line, i);
        }
        double length = line.installed().value();
        if (length > LARGEST_LENGTH * chords) {
            v.add(Violation.of(
                            "unstretchedLength",
                            GivenValue.number(length, "m"),
                            InputRule.LENGTH_TOO_LONG,
                            LARGEST_LENGTH,
                            Violations.show(chords, "m"))
                    .allowing(AllowedRange.above(0).upTo(LARGEST_LENGTH * chords)));
        } else if (chords > length) {
            strain(line, "unstretchedLength", line.cable().elongation().tension(chords / length - 1), v);
        }
    }

    private static double chord(Lifeline line, int span) {
        return StrictMath.hypot(line.run(span), line.rise(span));
    }

    private static String unit(Installed installed) {
        return switch (installed.form()) {
            case PRETENSION, HORIZONTAL_TENSION -> "N";
            case INITIAL_SAG, UNSTRETCHED_LENGTH -> "m";
        };
    }
}
