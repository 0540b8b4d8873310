package org.lifeline.model;

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

    static void check(Lifeline line, Violations v) {
        Installed stated = line.installed();
        switch (stated.form()) {
            case PRETENSION -> tension(line, "installed.pretension", v);
            case HORIZONTAL_TENSION -> tension(line, "installed.horizontalTension", v);
            case INITIAL_SAG -> sag(line, v);
            case UNSTRETCHED_LENGTH -> length(line, v);
        }
    }

    private static void tension(Lifeline line, String path, Violations v) {
        double t = line.installed().value();
        line.cable().terminationStrength().ifPresent(holds -> {
            if (t > holds) {
                v.add(
                        path,
                        Violations.show(t, "N"),
                        "is more than cable and terminations hold, " + Violations.show(holds, "N")
                                + " (breaking strength "
                                + line.cable().breakingStrength().orElse(0)
                                + " N times termination efficiency "
                                + line.cable().terminationEfficiency() + ")");
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
                    Violations.show(line.installed().value(), unit(line.installed())),
                    "would stretch the cable by " + Violations.show(100 * strain, "%")
                            + " at installation; a cable given by its axial stiffness is taken up to "
                            + Violations.show(100 * LARGEST_STRAIN, "%")
                            + " (check axialStiffness, or give loadElongation)");
        }
    }

    private static void sag(Lifeline line, Violations v) {
        int span = line.installed().span();
        double chord = chord(line, span);
        double sag = line.installed().value();
        if (sag > LARGEST_SAG * chord) {
            v.add(
                    "installed.initialSag",
                    Violations.show(sag, "m"),
                    "must be at most the span of " + Violations.show(chord, "m"));
        } else {
            double run = line.run(span);
            // The parabola: H = w · chord · run / (8 sag), a few per cent below the catenary at the largest sag.
            strain(line, "installed.initialSag", line.weightPerLength() * chord * run / (8 * sag), v);
        }
    }

    private static void length(Lifeline line, Violations v) {
        double chords = 0;
        for (int i = 1; i <= line.spans(); i++) {
            chords += chord(line, i);
        }
        double length = line.installed().value();
        if (length > LARGEST_LENGTH * chords) {
            v.add(
                    "installed.unstretchedLength",
                    Violations.show(length, "m"),
                    "must be at most " + LARGEST_LENGTH + " times the distance along the supports of "
                            + Violations.show(chords, "m"));
        } else if (chords > length) {
            strain(
                    line,
                    "installed.unstretchedLength",
                    line.cable().elongation().tension(chords / length - 1),
                    v);
        }
    }

    private static double chord(Lifeline line, int span) {
        return Math.hypot(line.run(span), line.rise(span));
    }

    private static String unit(Installed installed) {
        return switch (installed.form()) {
            case PRETENSION, HORIZONTAL_TENSION -> "N";
            case INITIAL_SAG, UNSTRETCHED_LENGTH -> "m";
        };
    }
}
