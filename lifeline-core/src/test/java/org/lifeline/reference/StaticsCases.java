package org.lifeline.reference;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.SpanState;
import org.lifeline.analysis.Statics;
import org.lifeline.analysis.state.AppliedLoad;
import org.lifeline.base.Point;
import org.lifeline.base.Units;
import org.lifeline.model.Attachment;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.cable.Cable;
import org.lifeline.model.cable.LoadElongation;
import org.lifeline.reference.ReferenceCases.Inputs;

/** Published cases of cables at rest, computed through the public interface. */
final class StaticsCases {
    /** Axial stiffness that stands for an inextensible cable [N]. */
    private static final double INEXTENSIBLE = 1e15;

    private StaticsCases() {}

    static Map<String, Function<Inputs, Map<String, Double>>> all() {
        Map<String, Function<Inputs, Map<String, Double>>> map = new LinkedHashMap<>();
        map.put("cable-point-load", StaticsCases::cableWithPointLoad);
        map.put("weightless-point-load", StaticsCases::weightless);
        map.put("heavy-elastic", StaticsCases::heavyElastic);
        map.put("heavy-elastic-heated", StaticsCases::heavyElastic);
        map.put("two-pulleys-inextensible", StaticsCases::twoPulleys);
        map.put("two-pulleys", StaticsCases::twoPulleys);
        map.put("two-pulleys-fed", StaticsCases::twoPulleys);
        map.put("level-catenary", StaticsCases::catenary);
        map.put("level-catenary-h", StaticsCases::catenary);
        map.put("inclined-catenary", StaticsCases::catenary);
        map.put("inclined-catenary-h", StaticsCases::catenary);
        map.put("change-of-state", StaticsCases::changeOfState);
        map.put("ruling-span", StaticsCases::rulingSpan);
        map.put("capstan-lowering", StaticsCases::capstan);
        map.put("capstan-turns", StaticsCases::capstan);
        map.put("sag-angle-15", StaticsCases::sagAngle);
        map.put("sag-angle-5", StaticsCases::sagAngle);
        map.put("midspan-load", StaticsCases::midspanLoad);
        return map;
    }

    static Cable cable(double weight, double stiffness) {
        return Cable.builder()
                .weightPerLength(weight)
                .elongation(LoadElongation.linear(stiffness))
                .build();
    }

    static Lifeline single(Cable cable, double run, double rise, Installed installed) {
        return Lifeline.builder()
                .cable(cable)
                .endAnchor("first", Point.of(0, 0, 0))
                .endAnchor("last", Point.of(run, 0, rise))
                .installed(installed)
                .build();
    }

    private static LineEquilibrium gripped(Lifeline line, double station, double force) {
        return Statics.withDefaults()
                .solve(line, List.of(new AppliedLoad(Place.of(1, station), Attachment.GRIPPED, force)));
    }

    /** Where a rising function passes a value. */
    private static double bisect(DoubleUnaryOperator f, double from, double to, double value) {
        double low = from;
        double high = to;
        for (int i = 0; i < 100; i++) {
            double mid = 0.5 * (low + high);
            if (f.applyAsDouble(mid) < value) {
                low = mid;
            } else {
                high = mid;
            }
        }
        return 0.5 * (low + high);
    }

    private static Map<String, Double> cableWithPointLoad(Inputs in) {
        double span = in.get("span");
        Cable cable = cable(in.get("weight"), in.get("area") * in.get("modulus"));
        Lifeline line = single(cable, span, 0, Installed.unstretchedLength(in.get("left") + in.get("right")));
        double station = bisect(
                x -> gripped(line, x, 0).span(1).pieces().get(0).unstretchedLength(),
                0.2 * span,
                0.6 * span,
                in.get("left"));
        LineEquilibrium before = gripped(line, station, 0);
        LineEquilibrium loaded = gripped(line, station, in.get("load"));
        Point a = before.loads().get(0).point();
        Point b = loaded.loads().get(0).point();
        return Map.of(
                "dx", b.x() - a.x(),
                "dz", b.z() - a.z(),
                "horizontalBefore", before.span(1).horizontalTension(),
                "horizontalLoaded", loaded.span(1).horizontalTension(),
                "midspanSag", before.span(1).sag());
    }

    private static Map<String, Double> weightless(Inputs in) {
        double span = in.get("span");
        double load = in.get("load");
        Lifeline line =
                single(cable(1e-6 * load / span, INEXTENSIBLE), span, 0, Installed.unstretchedLength(in.get("length")));
        double station = bisect(
                x -> gripped(line, x, load).loads().get(0).point().x(), 0.1 * span, 0.7 * span, in.get("station"));
        LineEquilibrium loaded = gripped(line, station, load);
        return Map.of(
                "horizontal",
                loaded.span(1).horizontalTension(),
                "drop",
                -loaded.loads().get(0).point().z());
    }

    private static Map<String, Double> heavyElastic(Inputs in) {
        Cable cable = Cable.builder()
                .massPerLength(in.get("density") * in.get("area"))
                .elasticModulus(in.get("modulus"))
                .metallicArea(in.get("area"))
                .thermalExpansion(in.get("expansion"))
                .build();
        Lifeline line = Lifeline.builder()
                .cable(cable)
                .gravity(in.get("gravity"))
                .endAnchor("first", Point.of(0, 0, 0))
                .endAnchor("last", Point.of(in.get("span"), 0, 0))
                .installed(Installed.unstretchedLength(in.get("length")))
                .build();
        SpanState state = Statics.withDefaults()
                .withTemperature(Installed.DEFAULT_TEMPERATURE + in.get("heating"))
                .solve(line, List.of())
                .span(1);
        return Map.of("sag", state.sag(), "horizontal", state.horizontalTension());
    }

    private static Map<String, Double> twoPulleys(Inputs in) {
        double span = in.get("span");
        Lifeline.Builder builder = Lifeline.builder()
                .cable(cable(in.get("weight"), in.get("stiffness")))
                .endAnchor("first", Point.of(0, 0, 0))
                .intermediateAnchor("pulley", Point.of(span, 0, 0), Passage.free())
                .endAnchor("last", Point.of(2 * span, 0, 0));
        Installed installed = in.has("length")
                ? Installed.unstretchedLength(in.get("length"))
                : Installed.pretension(in.get("tension"));
        LineEquilibrium state =
                Statics.withDefaults().solve(builder.installed(installed).build(), List.of());
        return Map.of("sag", state.span(2).sag(), "lengthPerSpan", state.span(1).unstretchedLength());
    }

    private static Map<String, Double> catenary(Inputs in) {
        double weight = in.has("mass") ? in.get("mass") * in.get("gravity") : in.get("weight");
        Installed installed = in.has("length")
                ? Installed.unstretchedLength(in.get("length"))
                : Installed.horizontalTension(in.get("horizontal"));
        Lifeline line = single(cable(weight, INEXTENSIBLE), in.get("span"), in.get("rise"), installed);
        LineEquilibrium state = Statics.withDefaults().solve(line, List.of());
        SpanState span = state.span(1);
        CablePiece piece = span.pieces().get(0);
        return Map.of(
                "sag", span.sag(),
                "length", span.unstretchedLength(),
                "horizontal", span.horizontalTension(),
                "maximumTension", span.maximumTension(),
                "lowerTension", state.firstTension(),
                "upperTension", state.lastTension(),
                "verticalStart", piece.startTension().z(),
                "verticalEnd", piece.endTension().z());
    }

    private static Map<String, Double> changeOfState(Inputs in) {
        double stiffness = in.get("modulus") * in.get("area");
        double bare = in.get("weight");
        double wind = in.get("wind");
        Lifeline line =
                single(cable(bare, stiffness), in.get("span"), 0, Installed.horizontalTension(in.get("horizontal")));
        double length = Statics.withDefaults().solve(line, List.of()).span(1).unstretchedLength();
        double both = Math.hypot(bare, wind);
        // The loaded conductor hangs in an inclined plane under the resultant of weight and wind.
        Lifeline blown = single(cable(both, stiffness), in.get("span"), 0, Installed.unstretchedLength(length));
        SpanState state = Statics.withDefaults().solve(blown, List.of()).span(1);
        return Map.of(
                "horizontal", state.horizontalTension(),
                "sag", state.sag(),
                "verticalSag", state.sag() * bare / both);
    }

    private static Map<String, Double> rulingSpan(Inputs in) {
        double[] spans = {in.get("span1"), in.get("span2"), in.get("span3")};
        Cable cable = cable(1, 2e9);
        Lifeline line = Lifeline.builder()
                .cable(cable)
                .endAnchor("first", Point.of(0, 0, 0))
                .intermediateAnchor("one", Point.of(spans[0], 0, 0), Passage.free())
                .intermediateAnchor("two", Point.of(spans[0] + spans[1], 0, 0), Passage.free())
                .endAnchor("last", Point.of(spans[0] + spans[1] + spans[2], 0, 0))
                .installed(Installed.horizontalTension(20_000))
                .build();
        Statics hot = Statics.withDefaults().withTemperature(Installed.DEFAULT_TEMPERATURE + 0.2);
        double tension = hot.solve(line, List.of()).span(1).horizontalTension();
        // The level single span whose tension falls to the same value: the longer, the less it falls.
        double ruling = bisect(
                length -> hot.solve(single(cable, length, 0, Installed.horizontalTension(20_000)), List.of())
                        .span(1)
                        .horizontalTension(),
                spans[0],
                spans[2],
                tension);
        return Map.of("rulingSpan", ruling);
    }

    /** A line that turns square corners in plan, pulled down in its first span until it slips at every corner. */
    private static Map<String, Double> capstan(Inputs in) {
        int corners = (int) in.get("corners");
        double[][] plan = {{0, 0}, {10, 0}, {10, 10}, {1, 10}, {1, 1}, {9, 1}, {9, 9}, {2, 9}};
        Lifeline.Builder builder = Lifeline.builder().cable(cable(1e-6, 1e5)).endAnchor("first", Point.of(0, 0, 0));
        for (int i = 1; i <= corners; i++) {
            builder.intermediateAnchor(
                    "corner " + i, Point.of(plan[i][0], plan[i][1], 0), Passage.friction(in.get("friction")));
        }
        Lifeline line = builder.endAnchor("last", Point.of(plan[corners + 1][0], plan[corners + 1][1], 0))
                .pretension(100)
                .build();
        LineEquilibrium state = Statics.withDefaults()
                .solve(line, List.of(new AppliedLoad(Place.of(1, 5), Attachment.FREE_RUNNING, 2000)));
        List<CablePiece> first = state.span(1).pieces();
        double high = first.get(first.size() - 1).endTension().magnitude();
        double ratio = high / state.lastTension();
        if (in.has("mass")) {
            return Map.of("heldForce", in.get("mass") * in.get("gravity") / ratio);
        }
        return Map.of("lowForce", in.get("force") / ratio, "highForce", in.get("force") * ratio);
    }

    private static Map<String, Double> sagAngle(Inputs in) {
        double span = 10;
        double load = Units.kN(6);
        Lifeline line = single(
                cable(1e-7 * load / span, INEXTENSIBLE),
                span,
                0,
                Installed.unstretchedLength(span / Math.cos(in.get("angle"))));
        double tension = gripped(line, span / 2, load).maximumTension();
        return Map.of("amplification", tension / load);
    }

    private static Map<String, Double> midspanLoad(Inputs in) {
        double span = in.get("span");
        double load = in.get("load");
        Lifeline line = single(
                cable(1e-7 * load / span, in.get("stiffness")), span, 0, Installed.unstretchedLength(in.get("length")));
        LineEquilibrium loaded = gripped(line, span / 2, load);
        return Map.of(
                "tension",
                loaded.maximumTension(),
                "sag",
                -loaded.loads().get(0).point().z());
    }
}
