package org.lifeline.design.criteria;

import static org.lifeline.design.criteria.Requirement.allOf;
import static org.lifeline.design.criteria.Requirement.anyOf;
import static org.lifeline.design.criteria.Requirement.eachAnchorAnyOf;
import static org.lifeline.design.criteria.Requirement.limit;
import static org.lifeline.design.criteria.Requirement.limitPerWorker;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lifeline.base.Units;
import org.lifeline.base.Violations;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;

/**
 * The built-in criteria. Where a source states a value in customary units first, that value is taken and not its rounded
 * metric form: 6 ft, not 1.8 m.
 *
 * <p>Sets hold published values and common practice; recalled values are in no set and must be asked for by name.
 * Immutable and thread-safe.
 *
 * @since 1.0.0
 */
public final class Criteria {
    private static final String IN_FORCE = "in force";
    private static final String OSHA = "US Occupational Safety and Health Administration";
    private static final String CONSTRUCTION = "29 CFR 1926.502, fall protection systems criteria";
    private static final String QUEBEC_GOVERNMENT = "Gouvernement du Québec";
    private static final String SAFETY_CODE = "Safety Code for the construction industry, S-2.1, r. 4";
    private static final String ALBERTA_GOVERNMENT = "Government of Alberta";
    private static final String ALBERTA_GUIDE = "Occupational Health and Safety Code, explanation guide";
    private static final String WSH_COUNCIL = "Workplace Safety and Health Council, Singapore";
    private static final String WSH_GUIDELINES = "Guidelines on anchorage, lifelines and temporary edge protection";

    /** Factor of safety of a complete system of personal fall arrest, on the force. */
    private static final double SYSTEM_FACTOR = 2;

    private static final double OSHA_ANCHORAGE = Units.poundsForce(5000); // N
    private static final double OSHA_ARREST_FORCE = Units.poundsForce(1800); // N
    private static final double OSHA_FREE_FALL = Units.feet(6); // m
    private static final double OSHA_DECELERATION = Units.feet(3.5); // m
    private static final double OSHA_MASS = Units.pounds(310); // kg

    private static final List<Criterion> BUILT_IN = List.of(
            published(
                    "us-osha-hll-factor",
                    "safety factor of at least 2 on the maximum arrest force, for the cable and every anchor; under the"
                            + " supervision of a qualified person",
                    osha("(d)(8); letter of 9 Feb 1995 (factor on force, not on energy)"),
                    limit(CheckedQuantity.STRENGTH_FACTOR, SYSTEM_FACTOR)),
            published(
                    "us-osha-maf",
                    "maximum arrest force at most 1,800 lbf (8 kN) with a body harness",
                    osha("(d)(16)(ii)"),
                    limit(CheckedQuantity.of(Quantity.ARREST_FORCE), OSHA_ARREST_FORCE)),
            published(
                    "us-osha-free-fall",
                    "free fall at most 6 ft (1.8 m), and no contact with a lower level",
                    osha("(d)(16)(iii)"),
                    allOf(
                            limit(CheckedQuantity.of(Quantity.FREE_FALL), OSHA_FREE_FALL),
                            limit(CheckedQuantity.FREE_HEIGHT, 0))),
            published(
                    "us-osha-deceleration",
                    "deceleration distance at most 3.5 ft (1.07 m), elongation of the line excluded",
                    osha("(d)(16)(iv); letter of 9 Feb 1995"),
                    limit(CheckedQuantity.of(Quantity.DEPLOYMENT), OSHA_DECELERATION)),
            published(
                    "us-osha-anchorage",
                    "each anchorage by itself at least 5,000 lbf (22.2 kN) for each worker, or part of a complete system with"
                            + " a factor of at least 2 under the supervision of a qualified person",
                    osha("(d)(15)"),
                    eachAnchorAnyOf(
                            limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, OSHA_ANCHORAGE),
                            limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, SYSTEM_FACTOR))),
            published(
                    "us-osha-impact",
                    "cable and every anchor strong enough for twice the potential impact energy of a free fall of 6 ft (1.8 m),"
                            + " or of the free fall that the system permits, whichever is less",
                    osha("(d)(16)(v)"),
                    limit(CheckedQuantity.IMPACT_STRENGTH, 1)),
            published(
                    "us-osha-mass",
                    "worker with tools below 310 lb (140 kg): a condition under which the values of the section are deemed to"
                            + " hold, not a limit",
                    osha("(d)(16), note"),
                    Requirement.condition(
                            limit(CheckedQuantity.WORKER_MASS, OSHA_MASS),
                            "a worker with tools has 310 lb (140.6 kg) or more; the section does not hold by its test method"
                                    + " for that mass, other proof is needed")),
            new Criterion(
                    "us-osha-general-industry",
                    "general industry: factor of at least 2 on the maximum arrest force; each anchorage at least 5,000 lbf for"
                            + " each worker or with a factor of 2; arrest force at most 1,800 lbf (8 kN); deceleration at most"
                            + " 3.5 ft; free fall at most 6 ft",
                    new Source(
                            OSHA,
                            new Source.Work(
                                    "29 CFR 1910.140, personal fall protection systems",
                                    IN_FORCE,
                                    "(c)(11), (c)(13), (d)(1), (d)(2)"),
                            Jurisdiction.UNITED_STATES,
                            SourceKind.RECALLED),
                    allOf(
                            limit(CheckedQuantity.STRENGTH_FACTOR, SYSTEM_FACTOR),
                            eachAnchorAnyOf(
                                    limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, OSHA_ANCHORAGE),
                                    limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, SYSTEM_FACTOR)),
                            limit(CheckedQuantity.of(Quantity.ARREST_FORCE), OSHA_ARREST_FORCE),
                            limit(CheckedQuantity.of(Quantity.DEPLOYMENT), OSHA_DECELERATION),
                            limit(CheckedQuantity.of(Quantity.FREE_FALL), OSHA_FREE_FALL))),
            published(
                    "qc-hll-prescriptive",
                    "steel cable of at least 12 mm, slack of at least 1 vertical to 12 horizontal (or 5°), at most 12 m"
                            + " between end anchors, end anchors of at least 90 kN, at most 2 workers",
                    quebec("s. 2.10.15"),
                    allOf(
                            limit(CheckedQuantity.CABLE_DIAMETER, 0.012),
                            limit(CheckedQuantity.INITIAL_SLOPE, 1.0 / 12),
                            limit(CheckedQuantity.LINE_LENGTH, 12),
                            limit(CheckedQuantity.END_ANCHOR_CAPACITY, 90_000),
                            limit(CheckedQuantity.WORKERS, 2))),
            published(
                    "qc-swing",
                    "harness attachment moved horizontally neither by more than 3 m nor by an angle of more than 22°",
                    quebec("s. 2.10.15; the same words in S-2.1, r. 13, s. 349.1"),
                    allOf(
                            limit(CheckedQuantity.of(Quantity.SWING_DISPLACEMENT), 3),
                            limit(CheckedQuantity.of(Quantity.SWING_ANGLE), Units.degrees(22)))),
            published(
                    "qc-maf",
                    "maximum arrest force at most 6 kN, or free fall at most 1.8 m",
                    quebec("s. 2.10.12"),
                    anyOf(
                            limit(CheckedQuantity.of(Quantity.ARREST_FORCE), 6_000),
                            limit(CheckedQuantity.of(Quantity.FREE_FALL), 1.8))),
            published(
                    "qc-anchor",
                    "each anchorage by itself at least 18 kN breaking strength, or by an engineer at least 2 times the maximum"
                            + " arrest force on it",
                    quebec("s. 2.10.15"),
                    eachAnchorAnyOf(
                            limit(CheckedQuantity.ANCHOR_CAPACITY, 18_000),
                            limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, SYSTEM_FACTOR))),
            published(
                    "ab-absorber-classes",
                    "mass and absorber of every worker fit class E4 (45 to 115 kg; 6 kN wet or frozen) or E6 (90 to"
                            + " 175 kg; 8 kN wet or frozen); classes withdrawn in CSA Z259.11-17",
                    alberta("s. 142.3"),
                    Requirement.of(new AbsorberClasses())),
            published(
                    "ab-anchor",
                    "each anchor by itself at least 16 kN for each worker, or 2 times the maximum arresting force on it",
                    alberta("s. 152"),
                    eachAnchorAnyOf(
                            limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 16_000),
                            limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, SYSTEM_FACTOR))),
            new Criterion(
                    "on-maf",
                    "peak fall arrest force on a worker at most 8 kN, and no contact with the ground or an object below; a"
                            + " temporary fixed support has static values within allowable stress (8 kN, 6 kN with a shock"
                            + " absorber) that are not checked here",
                    new Source(
                            "Government of Ontario",
                            new Source.Work("O. Reg. 213/91, construction projects", IN_FORCE, "s. 26.6, s. 26.7"),
                            Jurisdiction.ONTARIO,
                            SourceKind.RECALLED),
                    allOf(
                            limit(CheckedQuantity.of(Quantity.ARREST_FORCE), 8_000),
                            limit(CheckedQuantity.FREE_HEIGHT, 0))),
            new Criterion(
                    "bc-anchor",
                    "each anchor by itself at least 22 kN (5,000 lbf) ultimate capacity for each worker, or 2 times the maximum"
                            + " arrest force on it",
                    new Source(
                            "WorkSafeBC",
                            new Source.Work("Occupational Health and Safety Regulation, Part 11", IN_FORCE, "s. 11.6"),
                            Jurisdiction.BRITISH_COLUMBIA,
                            SourceKind.RECALLED),
                    eachAnchorAnyOf(
                            limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 22_000),
                            limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, SYSTEM_FACTOR))),
            published(
                    "mb-anchor",
                    "permanent anchorage of at least 22.2 kN ultimate capacity in any direction for each worker; temporary"
                            + " supports have values of their own (at least 8 kN without and 6 kN with a shock absorber, within"
                            + " allowable stress) and are not checked here",
                    new Source(
                            "Government of Manitoba",
                            new Source.Work(
                                    "Workplace Safety and Health Regulation",
                                    "as amended by M.R. 128/2019",
                                    "s. 14.14"),
                            Jurisdiction.MANITOBA,
                            SourceKind.PUBLISHED),
                    limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 22_200)),
            published(
                    "sg-rope-factor",
                    "wire rope line at least 2 times the maximum arrest load",
                    singapore("3.9"),
                    limit(CheckedQuantity.CABLE_STRENGTH_FACTOR, 2)),
            published(
                    "sg-rope-factor-fibre",
                    "webbing or fibre rope line at least 3 times the maximum arrest load",
                    singapore("3.9"),
                    limit(CheckedQuantity.CABLE_STRENGTH_FACTOR, 3)),
            published(
                    "eu-slope",
                    "anchor line deviates from the horizontal by at most 15° between extremity and intermediate anchors, at any"
                            + " point along its length; without anybody on it, at the temperatures in service",
                    new Source(
                            "European Committee for Standardization (CEN)",
                            new Source.Work("CEN/TS 16415", "2013", "definition of type C (EN 795)"),
                            Jurisdiction.EUROPE,
                            SourceKind.PUBLISHED),
                    limit(CheckedQuantity.LINE_SLOPE, Units.degrees(15))),
            published(
                    "eu-maf",
                    "maximum arrest force at most 6 kN, extension of the energy absorber at most 1.75 m",
                    new Source(
                            "Carrión et al.",
                            new Source.Work(
                                    "Int. J. Environ. Res. Public Health 17(20):7647", "2020", "where it cites EN 355"),
                            Jurisdiction.EUROPE,
                            SourceKind.PUBLISHED),
                    allOf(
                            limit(CheckedQuantity.of(Quantity.ARREST_FORCE), 6_000),
                            limit(CheckedQuantity.of(Quantity.DEPLOYMENT), 1.75))),
            published(
                    "jp-span",
                    "span L at most 10 m and at most (40/11)(H − 4 m), H from the working floor that carries the posts down to"
                            + " the obstruction, one worker in a span, rope fixed at every post",
                    new Source(
                            "Scaffolding and Construction Equipment Assoc. (Japan)",
                            new Source.Work("approval standard", "10th ed.", "ch. 25, as quoted"),
                            Jurisdiction.JAPAN,
                            SourceKind.PUBLISHED),
                    allOf(
                            limit(CheckedQuantity.SPAN_LENGTH, 10),
                            limit(CheckedQuantity.SPAN_FOR_HEIGHT, 1),
                            limit(CheckedQuantity.WORKERS_IN_ONE_SPAN, 1),
                            limit(CheckedQuantity.FIXED_POSTS, 1))),
            published(
                    "nz-sag",
                    "lines of 2 or 3 spans: initial sag of about 30 mm for each metre of span, end anchors at least"
                            + " 44 kN, intermediate anchors at least 12 kN, the line turns by at most 15° at an intermediate"
                            + " anchorage, one worker in a span; the maximum span of the leaflet is left out",
                    new Source(
                            "New Zealand static-line safety leaflet",
                            new Source.Work(
                                    "summary of the prescribed configurations of AS/NZS 1891.2 (the leaflet, not the standard,"
                                            + " was read)",
                                    "2010",
                                    "prescribed configurations"),
                            Jurisdiction.NEW_ZEALAND,
                            SourceKind.PUBLISHED),
                    Requirement.forSpans(
                            2,
                            3,
                            allOf(
                                    limit(CheckedQuantity.INITIAL_SAG_RATIO, 0.030),
                                    limit(CheckedQuantity.END_ANCHOR_CAPACITY, 44_000),
                                    limit(CheckedQuantity.INTERMEDIATE_ANCHOR_CAPACITY, 12_000),
                                    limit(CheckedQuantity.LINE_TURN, Units.degrees(15)),
                                    limit(CheckedQuantity.WORKERS_IN_ONE_SPAN, 1)))),
            published(
                    "iso-users",
                    "at most three persons on a flexible horizontal lifeline system",
                    new Source(
                            "International Organization for Standardization",
                            new Source.Work("ISO 16024", "2005", "scope"),
                            Jurisdiction.INTERNATIONAL,
                            SourceKind.PUBLISHED),
                    limit(CheckedQuantity.WORKERS, 3)),
            practice(
                    "anchor-arrest-16kN",
                    "anchorage for fall arrest at least 16 kN",
                    limit(CheckedQuantity.ANCHOR_CAPACITY, 16_000)),
            practice(
                    "anchor-restraint-3.5kN",
                    "temporary anchor for travel restraint at least 3.5 kN (800 lbf)",
                    limit(CheckedQuantity.ANCHOR_CAPACITY, 3_500)),
            practice(
                    "clearance-margin",
                    "margin below the feet of at least 0.6 m",
                    limit(CheckedQuantity.STATED_MARGIN, 0.6)),
            practice(
                    "harness-stretch",
                    "harness stretch of at least 0.3 m",
                    limit(CheckedQuantity.STATED_HARNESS_STRETCH, 0.3)));

    private Criteria() {}

    private static Source osha(String place) {
        return new Source(
                OSHA, new Source.Work(CONSTRUCTION, IN_FORCE, place), Jurisdiction.UNITED_STATES, SourceKind.PUBLISHED);
    }

    private static Source quebec(String place) {
        return new Source(
                QUEBEC_GOVERNMENT,
                new Source.Work(SAFETY_CODE, IN_FORCE, place),
                Jurisdiction.QUEBEC,
                SourceKind.PUBLISHED);
    }

    private static Source alberta(String place) {
        return new Source(
                ALBERTA_GOVERNMENT,
                new Source.Work(ALBERTA_GUIDE, IN_FORCE, place),
                Jurisdiction.ALBERTA,
                SourceKind.PUBLISHED);
    }

    private static Source singapore(String place) {
        return new Source(
                WSH_COUNCIL,
                new Source.Work(WSH_GUIDELINES, IN_FORCE, place),
                Jurisdiction.SINGAPORE,
                SourceKind.PUBLISHED);
    }

    private static Criterion published(String id, String title, Source source, Requirement requirement) {
        return new Criterion(id, title, source, requirement);
    }

    private static Criterion practice(String id, String title, Requirement requirement) {
        return new Criterion(id, title, Source.commonPractice(), requirement);
    }

    /**
     * All built-in criteria.
     *
     * @return the criteria; unmodifiable
     */
    public static List<Criterion> builtIn() {
        return BUILT_IN;
    }

    /**
     * A built-in criterion by its name, recalled values included. The name of a {@link ReferenceValue} gives a criterion that is
     * never evaluated, since a fact is no limit, so that a design may cite it.
     *
     * @param id for example {@code "us-osha-maf"}
     * @return the criterion, if there is one
     */
    public static Optional<Criterion> of(String id) {
        Violations.required("id", id);
        return BUILT_IN.stream()
                .filter(c -> c.id().equals(id))
                .findFirst()
                .or(() -> ReferenceValue.of(id).map(Criteria::cited));
    }

    private static Criterion cited(ReferenceValue fact) {
        return new Criterion(
                fact.id(), fact.text(), fact.source(), Requirement.none("it is a fact of the trade, not a limit"));
    }

    /**
     * The names that {@link #of} knows: of the built-in criteria, then of the facts of the trade.
     *
     * @return the ids; unmodifiable
     */
    public static List<String> ids() {
        return Stream.concat(
                        BUILT_IN.stream().map(Criterion::id),
                        ReferenceValue.all().stream().map(ReferenceValue::id))
                .toList();
    }

    /**
     * The set of a jurisdiction, without recalled values.
     *
     * @param where the jurisdiction
     * @return its criteria; unmodifiable
     */
    public static List<Criterion> in(Jurisdiction where) {
        Violations.required("where", where);
        return withoutRecalled(BUILT_IN).stream()
                .filter(c -> c.source().jurisdiction() == where)
                .toList();
    }

    /**
     * Leaves out what was recalled from memory, as every set does.
     *
     * @param criteria criteria
     * @return those whose value was read in a source, is common practice or was stated in the design; unmodifiable
     */
    public static List<Criterion> withoutRecalled(List<Criterion> criteria) {
        Violations.requiredAll("criteria", criteria);
        return criteria.stream()
                .filter(c -> c.source().kind() != SourceKind.RECALLED)
                .toList();
    }

    /**
     * Checks several criteria against the worst values of a design.
     *
     * @param criteria the criteria
     * @param extremes worst values, of stated falls or of an envelope
     * @return one result each, in the same order; unmodifiable
     */
    public static List<CriterionResult> check(List<Criterion> criteria, Extremes extremes) {
        Violations.requiredAll("criteria", criteria);
        Violations.required("extremes", extremes);
        return criteria.stream().map(c -> c.check(extremes)).toList();
    }
}
