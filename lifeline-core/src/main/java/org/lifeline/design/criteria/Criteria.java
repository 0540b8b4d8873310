package org.lifeline.design.criteria;

import static org.lifeline.design.criteria.Requirement.allOf;
import static org.lifeline.design.criteria.Requirement.anyOf;
import static org.lifeline.design.criteria.Requirement.limit;
import static org.lifeline.design.criteria.Requirement.limitPerWorker;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.lifeline.base.Units;
import org.lifeline.design.envelope.Extremes;
import org.lifeline.design.envelope.Quantity;

/**
 * The built-in criteria. Where a source states a value in customary units first, that value is taken and not its rounded
 * metric form: 6 ft, not 1.8 m.
 *
 * <p>Sets hold published values and common practice; recalled values are in no set and must be asked for by name.
 * Immutable and thread-safe.
 */
public final class Criteria {
    private static final List<Criterion> BUILT_IN = List.of(
            published(
                    "us-osha-hll-factor",
                    "safety factor of at least 2 on the maximum arrest force, for the cable and every anchor; under the"
                            + " supervision of a qualified person",
                    "29 CFR 1926.502(d)(8); OSHA letter of 9 Feb 1995 (factor on force, not on energy)",
                    Jurisdiction.UNITED_STATES,
                    limit(CheckedQuantity.STRENGTH_FACTOR, 2)),
            published(
                    "us-osha-maf",
                    "maximum arrest force at most 1,800 lbf (8 kN) with a body harness",
                    "29 CFR 1926.502(d)(16)(ii)",
                    Jurisdiction.UNITED_STATES,
                    limit(CheckedQuantity.of(Quantity.ARREST_FORCE), Units.poundsForce(1800))),
            published(
                    "us-osha-free-fall",
                    "free fall at most 6 ft (1.8 m), and no contact with a lower level",
                    "29 CFR 1926.502(d)(16)(iii)",
                    Jurisdiction.UNITED_STATES,
                    allOf(
                            limit(CheckedQuantity.of(Quantity.FREE_FALL), Units.feet(6)),
                            limit(CheckedQuantity.FREE_HEIGHT, 0))),
            published(
                    "us-osha-deceleration",
                    "deceleration distance at most 3.5 ft (1.07 m), elongation of the line excluded",
                    "29 CFR 1926.502(d)(16)(iv); OSHA letter of 9 Feb 1995",
                    Jurisdiction.UNITED_STATES,
                    limit(CheckedQuantity.of(Quantity.DEPLOYMENT), Units.feet(3.5))),
            published(
                    "us-osha-anchorage",
                    "every anchorage at least 5,000 lbf (22.2 kN) for each worker, or part of a complete system with a"
                            + " factor of at least 2 under the supervision of a qualified person",
                    "29 CFR 1926.502(d)(15)",
                    Jurisdiction.UNITED_STATES,
                    anyOf(
                            limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, Units.poundsForce(5000)),
                            limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, 2))),
            published(
                    "us-osha-mass",
                    "worker with tools at most 310 lb (140 kg), for which the values of the section hold",
                    "29 CFR 1926.502(d)(16), note",
                    Jurisdiction.UNITED_STATES,
                    limit(CheckedQuantity.WORKER_MASS, Units.pounds(310))),
            published(
                    "qc-hll-prescriptive",
                    "steel cable of at least 12 mm, slack of at least 1 vertical to 12 horizontal (or 5°), at most 12 m"
                            + " between end anchors, end anchors of at least 90 kN, at most 2 workers",
                    "Safety Code for the construction industry, S-2.1, r. 4, s. 2.10.15",
                    Jurisdiction.QUEBEC,
                    allOf(
                            limit(CheckedQuantity.CABLE_DIAMETER, 0.012),
                            limit(CheckedQuantity.INITIAL_SLOPE, 1.0 / 12),
                            limit(CheckedQuantity.LINE_LENGTH, 12),
                            limit(CheckedQuantity.END_ANCHOR_CAPACITY, 90e3),
                            limit(CheckedQuantity.WORKERS, 2))),
            published(
                    "qc-swing",
                    "harness attachment displaced horizontally by at most 3 m or 22°",
                    "Safety Code for the construction industry, S-2.1, r. 4, s. 2.10.15",
                    Jurisdiction.QUEBEC,
                    anyOf(
                            limit(CheckedQuantity.of(Quantity.SWING_DISPLACEMENT), 3),
                            limit(CheckedQuantity.of(Quantity.SWING_ANGLE), Units.degrees(22)))),
            published(
                    "qc-maf",
                    "maximum arrest force at most 6 kN, or free fall at most 1.8 m",
                    "Safety Code for the construction industry, S-2.1, r. 4, s. 2.10.12",
                    Jurisdiction.QUEBEC,
                    anyOf(
                            limit(CheckedQuantity.of(Quantity.ARREST_FORCE), 6e3),
                            limit(CheckedQuantity.of(Quantity.FREE_FALL), 1.8))),
            published(
                    "ab-absorber-classes",
                    "mass and absorber of every worker fit class E4 (45 to 115 kg; 6 kN wet or frozen) or E6 (90 to"
                            + " 175 kg; 8 kN wet or frozen); classes withdrawn in CSA Z259.11-17",
                    "Alberta OHS Code explanation guide, s. 142.3",
                    Jurisdiction.ALBERTA,
                    new AbsorberClasses()),
            published(
                    "ab-anchor",
                    "every anchor at least 16 kN for each worker, or 2 times the maximum arresting force on it",
                    "Alberta OHS Code explanation guide, s. 829",
                    Jurisdiction.ALBERTA,
                    anyOf(
                            limitPerWorker(CheckedQuantity.ANCHOR_CAPACITY, 16e3),
                            limit(CheckedQuantity.ANCHOR_STRENGTH_FACTOR, 2))),
            published(
                    "sg-rope-factor",
                    "wire rope line at least 2 times the maximum arrest load",
                    "WSH Council, Guidelines on anchorage, lifelines and temporary edge protection systems, 3.9",
                    Jurisdiction.SINGAPORE,
                    limit(CheckedQuantity.CABLE_STRENGTH_FACTOR, 2)),
            published(
                    "sg-rope-factor-fibre",
                    "webbing or fibre rope line at least 3 times the maximum arrest load",
                    "WSH Council, Guidelines on anchorage, lifelines and temporary edge protection systems, 3.9",
                    Jurisdiction.SINGAPORE,
                    limit(CheckedQuantity.CABLE_STRENGTH_FACTOR, 3)),
            published(
                    "eu-slope",
                    "anchor line deviates from the horizontal by at most 15°, measured along the chord of every span",
                    "CEN/TS 16415:2013, definition of type C",
                    Jurisdiction.EUROPE,
                    limit(CheckedQuantity.CHORD_ANGLE, Units.degrees(15))),
            published(
                    "eu-maf",
                    "maximum arrest force at most 6 kN, extension of the energy absorber at most 1.75 m",
                    "EN 355, as cited in Carrión et al., Int. J. Environ. Res. Public Health 17(20):7647, 2020",
                    Jurisdiction.EUROPE,
                    allOf(
                            limit(CheckedQuantity.of(Quantity.ARREST_FORCE), 6e3),
                            limit(CheckedQuantity.of(Quantity.DEPLOYMENT), 1.75))),
            published(
                    "jp-span",
                    "span L at most 10 m and at most (40/11)(H − 4 m), one worker in a span, rope fixed at every post",
                    "Scaffolding and Construction Equipment Association of Japan, approval standard, ch. 25, as quoted",
                    Jurisdiction.JAPAN,
                    allOf(
                            limit(CheckedQuantity.SPAN_LENGTH, 10),
                            limit(CheckedQuantity.SPAN_FOR_HEIGHT, 1),
                            limit(CheckedQuantity.WORKERS_IN_ONE_SPAN, 1),
                            limit(CheckedQuantity.FIXED_POSTS, 1))),
            published(
                    "nz-sag",
                    "lines of 2 or 3 spans: initial sag of about 30 mm for each metre of span, end anchors at least"
                            + " 44 kN, intermediate anchors at least 12 kN, at most 15° deviation, one worker in a span",
                    "New Zealand static-line safety summary, 2010",
                    Jurisdiction.NEW_ZEALAND,
                    Requirement.onlyFor(
                            s -> s.line().spans() == 2 || s.line().spans() == 3,
                            "it is stated for lines of 2 or 3 spans",
                            allOf(
                                    limit(CheckedQuantity.INITIAL_SAG_RATIO, 0.030),
                                    limit(CheckedQuantity.END_ANCHOR_CAPACITY, 44e3),
                                    limit(CheckedQuantity.INTERMEDIATE_ANCHOR_CAPACITY, 12e3),
                                    limit(CheckedQuantity.CHORD_ANGLE, Units.degrees(15)),
                                    limit(CheckedQuantity.WORKERS_IN_ONE_SPAN, 1)))),
            published(
                    "iso-users",
                    "at most three persons on a flexible horizontal lifeline system",
                    "ISO 16024:2005, scope",
                    Jurisdiction.INTERNATIONAL,
                    limit(CheckedQuantity.WORKERS, 3)),
            practice(
                    "anchor-arrest-16kN",
                    "anchorage for fall arrest at least 16 kN",
                    limit(CheckedQuantity.ANCHOR_CAPACITY, 16e3)),
            practice(
                    "anchor-restraint-3.5kN",
                    "temporary anchor for travel restraint at least 3.5 kN (800 lbf)",
                    limit(CheckedQuantity.ANCHOR_CAPACITY, 3.5e3)),
            practice(
                    "clearance-margin",
                    "margin below the feet of at least 0.6 m",
                    limit(CheckedQuantity.STATED_MARGIN, 0.6)),
            practice(
                    "harness-stretch",
                    "harness stretch of at least 0.3 m",
                    limit(CheckedQuantity.STATED_HARNESS_STRETCH, 0.3)));

    private Criteria() {}

    private static Criterion published(String id, String title, String source, Jurisdiction where, Requirement rule) {
        return new Criterion(id, title, new Source(source, where, SourceKind.PUBLISHED), rule);
    }

    private static Criterion practice(String id, String title, Requirement rule) {
        return new Criterion(
                id,
                title,
                new Source("common practice, no source", Jurisdiction.PRACTICE, SourceKind.COMMON_PRACTICE),
                rule);
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
        return criteria.stream().map(c -> c.check(extremes)).toList();
    }
}
