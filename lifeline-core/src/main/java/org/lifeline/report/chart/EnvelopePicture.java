package org.lifeline.report.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.base.InertText;
import org.lifeline.design.criteria.CapacityCheck;
import org.lifeline.design.envelope.EnvelopeResult;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.report.document.Picture;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.UnitChoice;

/**
 * Draws what a fall at each place along the line does at worst: loads, distances, and what they leave of the clearance.
 *
 * @since 1.0.0
 */
public final class EnvelopePicture {
    private static final int MOST_SUPPORTS = 5;
    private static final int MOST_MARKS = 9;
    /** A limit beyond so many times the largest load would squeeze the lines together [-]. */
    private static final double FAR = 2;

    private static final ChartAxis ALONG = new ChartAxis("place of the fall along the line", QuantityKind.LENGTH);

    private EnvelopePicture() {}

    /**
     * Draws loads on the line and on its supports against the place of the fall.
     *
     * @param envelope the envelope
     * @param choice the units
     * @param inTime arrests of the same design that were followed in time; each stands as a point
     * @param limits comparisons of criteria; each limit of a force stands as a level where it is near enough
     * @return the picture
     */
    public static Picture loads(
            EnvelopeResult envelope, UnitChoice choice, List<ArrestResult> inTime, List<CapacityCheck> limits) {
        List<Support> supports = envelope.design().line().supports();
        List<ChartSeries> line = new ArrayList<>(List.of(
                series("tension of the cable", envelope.profile(Quantity.MAXIMUM_TENSION)),
                series("end anchor load", envelope.profile(Quantity.END_ANCHOR_LOAD)),
                series("arrest force", envelope.profile(Quantity.ARREST_FORCE))));
        if (!inTime.isEmpty()) {
            line.add(points(envelope, "tension, in time", inTime, Quantity.MAXIMUM_TENSION));
            line.add(points(envelope, "end anchor, in time", inTime, Quantity.END_ANCHOR_LOAD));
        }
        List<ChartSeries> loads = new ArrayList<>();
        boolean each = supports.size() <= MOST_SUPPORTS + 1;
        for (int i = 0; each && i < supports.size(); i++) {
            loads.add(series(InertText.name(supports.get(i).id()), envelope.supportProfile(i)));
        }
        if (!each) {
            loads.add(series("end anchors", envelope.profile(Quantity.END_ANCHOR_LOAD)));
            loads.add(series("intermediate anchors", envelope.profile(Quantity.INTERMEDIATE_ANCHOR_LOAD)));
        }
        Quantities q = Quantities.in(choice);
        return ChartPicture.in(choice)
                .draw(
                        "Envelope of loads along the line: "
                                + InertText.name(envelope.design().title()),
                        "Worst case at each place over temperatures, both deployment forces and the ranges of the envelope,"
                                + " model factors applied. Largest end anchor load "
                                + q.result(QuantityKind.FORCE, most(envelope, Quantity.END_ANCHOR_LOAD))
                                + ", largest arrest force "
                                + q.result(QuantityKind.FORCE, most(envelope, Quantity.ARREST_FORCE)) + "."
                                + (inTime.isEmpty()
                                        ? ""
                                        : " Lines: energy balance; rings: the arrests that were followed in time, with model"
                                                + " factors, without allowance.")
                                + (limits.isEmpty()
                                        ? ""
                                        : " Limits of the criteria are levels; one beyond twice the largest load is not drawn."),
                        ALONG,
                        List.of(
                                marked(
                                        envelope,
                                        new ChartPanel(
                                                new ChartAxis("force", QuantityKind.FORCE),
                                                line,
                                                levels(limits, line, false))),
                                new ChartPanel(
                                        new ChartAxis("load on each support", QuantityKind.FORCE),
                                        loads,
                                        levels(limits, loads, true))));
    }

    /**
     * Draws distances and the elevation below which nothing may stand against the place of the fall.
     *
     * @param envelope the envelope
     * @param choice the units
     * @return the picture
     */
    public static Picture distances(EnvelopeResult envelope, UnitChoice choice) {
        List<EnvelopeResult.ClearancePoint> clearance = envelope.clearance();
        double[] along = clearance.stream().mapToDouble(c -> c.along()).toArray();
        double[] required =
                clearance.stream().mapToDouble(c -> c.requiredElevation()).toArray();
        double[] below =
                clearance.stream().mapToDouble(c -> c.obstructionElevation()).toArray();
        List<ChartSeries> elevations = new ArrayList<>();
        elevations.add(ChartSeries.of("lowest point + margin", along, required));
        if (clearance.stream().anyMatch(c -> c.margin().isPresent())) {
            elevations.add(ChartSeries.of("top of obstruction", along, below));
        }
        List<ChartSeries> lengths = List.of(
                series("total fall distance", envelope.profile(Quantity.TOTAL_FALL_DISTANCE)),
                series("sag at the load", envelope.profile(Quantity.SAG)),
                series("deployment", envelope.profile(Quantity.DEPLOYMENT)));
        Quantities q = Quantities.in(choice);
        String margin = envelope.extremes()
                .of(Quantity.CLEARANCE_MARGIN)
                .map(e ->
                        " Least clearance left above an obstruction " + q.result(QuantityKind.LENGTH, e.value()) + ".")
                .orElse(" No obstruction is stated.");
        return ChartPicture.in(choice)
                .draw(
                        "Envelope of distances along the line: "
                                + InertText.name(envelope.design().title()),
                        "Worst case at each place, model factors applied. Nothing may stand above the line of the lowest"
                                + " point and margin." + margin,
                        ALONG,
                        List.of(
                                marked(
                                        envelope,
                                        new ChartPanel(
                                                new ChartAxis("distance", QuantityKind.LENGTH), lengths, List.of())),
                                new ChartPanel(
                                        new ChartAxis("elevation", QuantityKind.LENGTH), elevations, List.of())));
    }

    private static ChartSeries points(
            EnvelopeResult envelope, String name, List<ArrestResult> arrests, Quantity quantity) {
        List<ArrestResult> sorted = arrests.stream()
                .sorted(Comparator.comparingDouble(
                        r -> envelope.design().line().along(r.fall().place())))
                .toList();
        return ChartSeries.of(
                        name,
                        sorted.stream()
                                .mapToDouble(r ->
                                        envelope.design().line().along(r.fall().place()))
                                .toArray(),
                        sorted.stream()
                                .mapToDouble(
                                        r -> quantity.value(r, envelope.design().modelFactors()))
                                .toArray())
                .dots();
    }

    /** What a load may be: the capacity over the factor between the load and the demand that is made of it. */
    private static List<ReferenceLine> levels(List<CapacityCheck> limits, List<ChartSeries> series, boolean supports) {
        double most = 0;
        for (ChartSeries s : series) {
            for (int i = 0; i < s.size(); i++) {
                most = Double.isFinite(s.y(i)) ? Math.max(most, s.y(i)) : most;
            }
        }
        Map<String, Double> least = new LinkedHashMap<>();
        for (CapacityCheck c : limits) {
            Extreme e = c.governing().orElse(null);
            if (e == null || !e.unit().equals("N") || !(c.demand() > 0)) {
                continue;
            }
            Quantity quantity = Quantity.of(c.quantityKey()).orElse(Quantity.SUPPORT_LOAD);
            double level = c.capacity() * e.value() / c.demand();
            boolean ofSupport =
                    quantity == Quantity.SUPPORT_LOAD && !c.component().equals("cable");
            if (ofSupport == supports && level <= FAR * most) {
                least.merge(
                        "limit: " + (c.component().isEmpty() ? quantity.words() : InertText.name(c.component())),
                        level,
                        Math::min);
            }
        }
        List<ReferenceLine> levels = new ArrayList<>();
        least.forEach((name, level) -> levels.add(ReferenceLine.level(name, level)));
        return levels;
    }

    private static double most(EnvelopeResult envelope, Quantity quantity) {
        return envelope.extremes().of(quantity).map(e -> e.value()).orElse(Double.NaN);
    }

    private static ChartSeries series(String name, List<EnvelopeResult.ProfilePoint> points) {
        return ChartSeries.of(
                name,
                points.stream().mapToDouble(p -> p.along()).toArray(),
                points.stream().mapToDouble(p -> p.value()).toArray());
    }

    private static ChartPanel marked(EnvelopeResult envelope, ChartPanel panel) {
        List<Support> supports = envelope.design().line().supports();
        ChartPanel marked = panel;
        for (int i = 1; i + 1 < supports.size() && supports.size() <= MOST_MARKS; i++) {
            double at = envelope.design().line().along(Place.of(i + 1, 0));
            marked = marked.with(ReferenceLine.at(InertText.name(supports.get(i).id()), at));
        }
        return marked;
    }
}
