package org.lifeline.examples.criteria;

import static org.lifeline.examples.criteria.CriterionResult.Mark.COMMON_PRACTICE;
import static org.lifeline.examples.criteria.CriterionResult.Mark.PUBLISHED;
import static org.lifeline.examples.criteria.CriterionResult.Mark.RECALLED;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.lifeline.base.Units;
import org.lifeline.examples.arrests.Demand;
import org.lifeline.examples.criteria.CriterionResult.Mark;
import org.lifeline.examples.criteria.CriterionResult.Origin;

/**
 * The criteria that a design file may name by their id: values of regulations, standards and the trade, each with its
 * source and whether it was read there. Where a regulation of the United States gives a value in pounds or feet and,
 * rounded, in SI, the first is taken.
 *
 * <p>None of them is applied unless the design asks for it. Immutable and thread-safe.
 */
public final class BuiltInCriteria {
    private static final double MAF_US = Units.poundsForce(1800);
    private static final double FREE_FALL_US = Units.feet(6);
    private static final double DECELERATION_US = Units.feet(3.5);
    private static final double ANCHORAGE_US = Units.poundsForce(5000);
    private static final double MASS_US = Units.pounds(310);

    private static final Map<String, Entry> ENTRIES = entries();

    private BuiltInCriteria() {}

    /** A criterion: where it comes from and how it is evaluated. */
    record Entry(String id, Origin origin, Consumer<CriterionSheet> rule) {}

    /**
     * The ids that are known.
     *
     * @return the ids; unmodifiable
     */
    public static Set<String> ids() {
        return ENTRIES.keySet();
    }

    static Entry entry(String id) {
        Entry entry = ENTRIES.get(id);
        if (entry == null) {
            throw new IllegalArgumentException("no built-in criterion has the id " + id);
        }
        return entry;
    }

    private static Map<String, Entry> entries() {
        Map<String, Entry> map = new LinkedHashMap<>();
        for (List<Entry> each : List.of(unitedStates(), canada(), elsewhere(), trade(), notLimits())) {
            each.forEach(e -> map.put(e.id(), e));
        }
        return java.util.Collections.unmodifiableMap(map);
    }

    private static Entry entry(String id, String source, Mark mark, Consumer<CriterionSheet> rule) {
        return new Entry(id, new Origin(source, mark), rule);
    }

    private static List<Entry> unitedStates() {
        String section = "29 CFR 1926.502";
        return List.of(
                entry(
                        "us-osha-hll-factor",
                        section + "(d)(8); OSHA letter of 9 Feb 1995 (factor on force, not on energy)",
                        PUBLISHED,
                        s -> {
                            s.cable("2 × maximum tension against breaking strength × termination efficiency", 2);
                            s.everySupport("2 × load against capacity", 2);
                        }),
                entry(
                        "us-osha-maf",
                        section + "(d)(16)(ii), 1,800 lbf with a body harness",
                        PUBLISHED,
                        s -> s.atMost(Demand.ARREST_FORCE, MAF_US)),
                entry(
                        "us-osha-free-fall",
                        section + "(d)(16)(iii), 6 ft, no contact with a lower level",
                        PUBLISHED,
                        s -> {
                            s.atMost(Demand.FREE_FALL, FREE_FALL_US);
                            s.noContact();
                        }),
                entry(
                        "us-osha-deceleration",
                        section + "(d)(16)(iv), 3.5 ft; OSHA letter of 9 Feb 1995 (elongation of the line excluded)",
                        PUBLISHED,
                        s -> s.atMost(Demand.DEPLOYMENT, DECELERATION_US)),
                entry(
                        "us-osha-anchorage",
                        section + "(d)(15), 5,000 lbf per worker, or part of a complete system with a factor of 2",
                        PUBLISHED,
                        s -> s.anchorage("5,000 lbf", ANCHORAGE_US)),
                entry(
                        "us-osha-mass",
                        section + "(d)(16), note: worker with tools below 310 lb",
                        PUBLISHED,
                        s -> s.compare("largest mass of a worker against 310 lb", "kg", s.largestMass(), MASS_US)));
    }

    private static List<Entry> canada() {
        String quebec = "Québec, Safety Code for the construction industry, S-2.1 r.4, s. ";
        return List.of(
                entry("qc-hll-prescriptive", quebec + "2.10.15", PUBLISHED, s -> {
                    s.compare("12 mm against diameter of the steel cable", "m", 0.012, s.diameter());
                    s.compare("distance between the end anchors against 12 m", "m", s.lineLength(), 12);
                    s.endAnchors("90 kN against capacity", 90e3);
                    s.compare("number of workers against 2", "", s.workers(), 2);
                    s.open("slack of at least 1 vertical to 12 horizontal, or 5°: to be read off the installed state");
                }),
                entry("qc-swing", quebec + "2.10.15, 3 m (or 22°)", PUBLISHED, s -> s.swing(3)),
                entry("qc-maf", quebec + "2.10.12, 6 kN, or free fall of 1.8 m", PUBLISHED, s -> s.either(6e3, 1.8)),
                entry(
                        "ab-anchor",
                        "Alberta OHS Code, guide to s. 829, 16 kN per worker, or 2 × the maximum arresting force",
                        PUBLISHED,
                        s -> s.anchorage("16 kN", 16e3)));
    }

    private static List<Entry> elsewhere() {
        return List.of(
                entry(
                        "sg-rope-factor",
                        "WSH Council (Singapore), Guidelines on anchorage, lifelines and temporary edge protection, 3.9",
                        PUBLISHED,
                        s -> {
                            s.cable("if of wire rope: 2 × maximum tension against breaking strength × efficiency", 2);
                            s.cable("if of webbing or fibre rope: 3 × maximum tension against the same", 3);
                        }),
                entry(
                        "eu-slope",
                        "CEN/TS 16415:2013, type C: 15° from horizontal",
                        PUBLISHED,
                        s -> s.steepestSlope(15)),
                entry(
                        "eu-maf",
                        "EN 355 as cited in Carrión et al. 2020, doi 10.3390/ijerph17207647: 6 kN, 1.75 m",
                        PUBLISHED,
                        s -> {
                            s.atMost(Demand.ARREST_FORCE, 6e3);
                            s.atMost(Demand.DEPLOYMENT, 1.75);
                        }),
                entry(
                        "jp-span",
                        "Scaffolding and Construction Equipment Assoc. (Japan), approval standard, ch. 25, as quoted",
                        PUBLISHED,
                        s -> {
                            s.compare("longest span against 10 m", "m", s.longestSpan(), 10);
                            s.open("L ≤ (40/11)(H − 4) m, one worker per span, rope fixed at every post");
                        }),
                entry("nz-sag", "New Zealand static-line safety summary (2010)", PUBLISHED, s -> {
                    s.leastSag(0.03);
                    s.endAnchors("44 kN against capacity", 44e3);
                    s.intermediateAnchors("12 kN against capacity", 12e3);
                    s.steepestSlope(15);
                }),
                entry(
                        "iso-users",
                        "ISO 16024:2005, scope: at most three persons",
                        PUBLISHED,
                        s -> s.compare("number of workers against 3", "", s.workers(), 3)));
    }

    private static List<Entry> trade() {
        String none = "common practice, no source";
        return List.of(
                entry("anchor-arrest-16kN", none, COMMON_PRACTICE, s -> {
                    s.endAnchors("16 kN against capacity", 16e3);
                    s.intermediateAnchors("16 kN against capacity", 16e3);
                }),
                entry(
                        "clearance-margin",
                        none,
                        COMMON_PRACTICE,
                        s -> s.compare("0.6 m against stated margin", "m", 0.6, s.statedMargin())),
                entry(
                        "harness-stretch",
                        none,
                        COMMON_PRACTICE,
                        s -> s.compare("0.3 m against stated harness stretch", "m", 0.3, s.statedStretch())));
    }

    /** Values of the trade that a design may cite but that cannot be compared with anything in it. */
    private static List<Entry> notLimits() {
        return List.of(
                open(
                        "us-osha-sag-angle",
                        "29 CFR 1926 Subpart M App. C, part II",
                        PUBLISHED,
                        "describes how tension grows with a small sag angle; the calculation covers it"),
                open(
                        "ab-absorber-classes",
                        "Alberta OHS Code explanation guide, s. 142.3",
                        PUBLISHED,
                        "the design does not say to which class the absorbers belong"),
                open(
                        "anchor-restraint-3.5kN",
                        "common practice, no source",
                        COMMON_PRACTICE,
                        "concerns travel restraint, which is not what was computed"),
                open(
                        "connector-16kN",
                        "common practice, no source",
                        COMMON_PRACTICE,
                        "the design does not describe connectors"),
                open("e4-extension", "common practice, no source", COMMON_PRACTICE, "describes an absorber; no limit"),
                open(
                        "absorber-average",
                        "Carrión et al., Int. J. Environ. Res. Public Health 17(20):7647, 2020",
                        PUBLISHED,
                        "describes measured absorbers; no limit"),
                open(
                        "absorber-in-service",
                        "common practice, no source",
                        COMMON_PRACTICE,
                        "describes absorbers in service; no limit"),
                open("dring-height", "common practice, no source", COMMON_PRACTICE, "describes a harness; no limit"),
                open(
                        "human-surrogate",
                        "ANSI/ASSP Z359 history as quoted in trade press",
                        RECALLED,
                        "describes test masses; no limit"),
                open(
                        "csa-documents",
                        "CSA Z259.16-15 cl. 4.3 as summarised publicly",
                        PUBLISHED,
                        "lists what the engineer's documents state; no number to compare"),
                open(
                        "csa-clearance-force",
                        "CSA Z259.16-21 preface as summarised publicly",
                        PUBLISHED,
                        "says which deployment force to take; loads and distances here each take their own"));
    }

    private static Entry open(String id, String source, Mark mark, String why) {
        return entry(id, source, mark, s -> s.open(why));
    }
}
