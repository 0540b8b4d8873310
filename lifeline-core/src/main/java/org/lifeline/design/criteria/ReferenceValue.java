package org.lifeline.design.criteria;

import java.util.List;
import java.util.Optional;
import org.lifeline.base.Violations;

/**
 * A value of the trade that is no limit on a design by itself: for an engineer to use, with its source and mark.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id name of the fact
 * @param text the fact in words, with its values
 * @param source where it comes from
 * @since 1.0.0
 */
public record ReferenceValue(String id, String text, Source source) {
    private static final List<ReferenceValue> ALL = List.of(
            new ReferenceValue(
                    "us-osha-sag-angle",
                    "tension of a horizontal lifeline is about 2 times the force of the lanyard at a sag angle of 15°, and"
                            + " about 6 times at 5°",
                    new Source(
                            "US Occupational Safety and Health Administration",
                            new Source.Work("29 CFR 1926 Subpart M", "in force", "App. C, part II"),
                            Jurisdiction.UNITED_STATES,
                            SourceKind.PUBLISHED)),
            practice("connector-16kN", "snap hooks and carabiners of at least 16 kN"),
            practice("e4-extension", "an E4 absorber adds up to about 1.1 m (3.5 ft) to the lanyard"),
            new ReferenceValue(
                    "absorber-average",
                    "average deployment force about 0.875 of the peak, in 20 drops of 10 models",
                    new Source(
                            "Carrión et al.",
                            new Source.Work(
                                    "Int. J. Environ. Res. Public Health 17(20):7647", "2020", "20 drops of 10 models"),
                            Jurisdiction.PRACTICE,
                            SourceKind.PUBLISHED)),
            practice("absorber-in-service", "deployment force 65 to 85 % of the value of the class in service"),
            practice("dring-height", "harness attachment 1.5 m (5 ft) above the feet"),
            new ReferenceValue(
                    "human-surrogate",
                    "mass of a rigid test weight times 1.1 for a human body (1.4 before 2008)",
                    new Source(
                            "",
                            new Source.Work("history of ANSI/ASSP Z359 as quoted in the trade press", "", ""),
                            Jurisdiction.UNITED_STATES,
                            SourceKind.RECALLED)),
            new ReferenceValue(
                    "csa-documents",
                    "what the engineer's documents state: system, layout, workers, component data, proof test, limits of the"
                            + " surroundings, loads, sags, deployment, arrest force, and the worst case over temperature",
                    csa("CSA Z259.16", "2015", "cl. 4.3, as summarised publicly")),
            new ReferenceValue(
                    "csa-clearance-force",
                    "distances are computed with the clearance deployment force, loads with the maximum deployment force;"
                            + " static analysis is not allowed where deformable anchors absorb the energy",
                    csa("CSA Z259.16", "2021", "preface, as summarised publicly")));

    private static Source csa(String title, String year, String place) {
        return new Source(
                "CSA Group", new Source.Work(title, year, place), Jurisdiction.INTERNATIONAL, SourceKind.PUBLISHED);
    }

    private static ReferenceValue practice(String id, String text) {
        return new ReferenceValue(id, text, Source.commonPractice());
    }

    /**
     * All facts.
     *
     * @return the facts; unmodifiable
     */
    public static List<ReferenceValue> all() {
        return ALL;
    }

    /**
     * A fact by its name.
     *
     * @param id for example {@code "us-osha-sag-angle"}
     * @return the fact, if there is one
     */
    public static Optional<ReferenceValue> of(String id) {
        Violations.required("id", id);
        return ALL.stream().filter(f -> f.id.equals(id)).findFirst();
    }

    /**
     * Tension of a weightless line over the vertical load in the middle of it, both legs at the same angle: 1/(2 sin θ), by
     * equilibrium of the loaded point.
     *
     * @param angle sag angle θ of the legs below the horizontal [rad], above 0, at most π/2
     * @return tension over load [-]
     */
    public static double tensionOverLoad(double angle) {
        return 1 / (2 * StrictMath.sin(angle));
    }
}
