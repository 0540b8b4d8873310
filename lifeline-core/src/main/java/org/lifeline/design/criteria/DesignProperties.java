package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.lifeline.analysis.CablePiece;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.base.Vector3;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;

/** Values that demands take in a design. */
final class DesignProperties {
    private DesignProperties() {}

    static CheckedValue quantity(CheckedDesign s, Quantity q) {
        Optional<Extreme> e = s.extremes().of(q);
        if (e.isEmpty()) {
            return CheckedValue.missing("", absent(s, q));
        }
        CheckedValue item = CheckedValue.of(e.get());
        // A margin is shown as what it is the difference of: required against available below the line.
        return q == Quantity.CLEARANCE_MARGIN
                ? item.shown(
                        1,
                        Quantity.REQUIRED_BELOW_LINE.value(
                                e.get().arrest(), s.design().modelFactors()),
                        "m")
                : item;
    }

    private static String absent(CheckedDesign s, Quantity q) {
        return switch (q) {
            case CLEARANCE_MARGIN ->
                s.design().clearance().obstructions().isEmpty()
                        ? "no obstruction is given"
                        : s.hasNoArrest() ? s.noCase() : "no obstruction lies below a fall";
            case INTERMEDIATE_ANCHOR_LOAD -> s.line().spans() == 1 ? "there is no intermediate anchor" : s.noCase();
            case INLINE_EXTENSION ->
                s.line().supports().stream().noneMatch(x -> x.inlineAbsorber().isPresent())
                        ? "there is no in-line energy absorber"
                        : s.noCase();
            default -> s.noCase();
        };
    }

    static CheckedValue support(CheckedDesign s, String id) {
        if (s.line().supports().stream().noneMatch(x -> x.id().equals(id))) {
            return CheckedValue.missing(id, "no support has this id");
        }
        return s.extremes().onSupport(id).map(CheckedValue::of).orElse(CheckedValue.missing(id, s.noCase()));
    }

    /** What is left below the feet at the lowest point; shown as needed against available below the line. */
    static List<CheckedValue> freeHeight(CheckedDesign s) {
        Optional<Extreme> e = s.extremes().of(Quantity.CLEARANCE_MARGIN);
        if (e.isEmpty()) {
            return List.of(CheckedValue.missing("", absent(s, Quantity.CLEARANCE_MARGIN)));
        }
        double margin = s.design().clearance().margin();
        double needed =
                Quantity.REQUIRED_BELOW_LINE.value(e.get().arrest(), s.design().modelFactors()) - margin;
        return List.of(
                CheckedValue.of(e.get()).withValue(e.get().value() + margin).shown(1, needed, "m"));
    }

    static List<CheckedValue> diameter(CheckedDesign s) {
        return List.of(
                s.line().cable().diameter().isPresent()
                        ? CheckedValue.of("cable", s.line().cable().diameter().getAsDouble())
                        : CheckedValue.missing("cable", "its diameter is not given"));
    }

    static List<CheckedValue> spans(CheckedDesign s) {
        List<CheckedValue> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            list.add(CheckedValue.of("span " + i, s.line().run(i)));
        }
        return list;
    }

    static List<CheckedValue> length(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.length()));
    }

    static List<CheckedValue> numberOfSpans(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.line().spans()));
    }

    static List<CheckedValue> sags(CheckedDesign s, double times) {
        LineEquilibrium installed = s.installed();
        List<CheckedValue> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            list.add(CheckedValue.of(
                    "span " + i, times * installed.span(i).sag() / s.line().run(i)));
        }
        return list;
    }

    static List<CheckedValue> chords(CheckedDesign s) {
        List<CheckedValue> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            list.add(CheckedValue.of(
                    "span " + i,
                    StrictMath.atan2(Math.abs(s.line().rise(i)), s.line().run(i))));
        }
        return list;
    }

    /**
     * The steepest slope of the line itself in every span, without anybody on it, over the temperatures in service. The slope of a
     * cable under its own weight is steepest at one of its ends.
     */
    static List<CheckedValue> slopes(CheckedDesign s) {
        List<LineEquilibrium> states = s.unloaded();
        List<CheckedValue> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            double steepest = 0;
            for (LineEquilibrium each : states) {
                List<CablePiece> pieces = each.span(i).pieces();
                double start = slope(pieces.get(0).startTension());
                double end = slope(pieces.get(pieces.size() - 1).endTension());
                steepest = Math.max(steepest, Math.max(start, end));
            }
            list.add(CheckedValue.of("span " + i, steepest));
        }
        return list;
    }

    private static double slope(Vector3 tension) {
        return StrictMath.atan2(Math.abs(tension.z()), tension.horizontal());
    }

    /** Angle by which the line turns at every intermediate anchor, from chord to chord, in plan and elevation together. */
    static List<CheckedValue> turns(CheckedDesign s) {
        List<Support> supports = s.line().supports();
        List<CheckedValue> list = new ArrayList<>();
        for (int i = 1; i < supports.size() - 1; i++) {
            Vector3 before =
                    supports.get(i).position().minus(supports.get(i - 1).position());
            Vector3 after = supports.get(i + 1).position().minus(supports.get(i).position());
            list.add(CheckedValue.of(supports.get(i).id(), before.angleTo(after)));
        }
        return list;
    }

    static List<CheckedValue> workers(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.users()));
    }

    static List<CheckedValue> statedMargin(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.design().clearance().margin()));
    }

    static List<CheckedValue> statedHarnessStretch(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.design().clearance().harnessStretch()));
    }

    static List<CheckedValue> heaviest(CheckedDesign s) {
        return List.of(CheckedValue.of(
                "",
                s.workers().stream()
                        .mapToDouble(w -> s.massesOf(w).high())
                        .max()
                        .orElseThrow()));
    }

    static List<CheckedValue> fixedPosts(CheckedDesign s) {
        List<Support> posts =
                s.line().supports().stream().filter(x -> !x.isEnd()).toList();
        if (posts.isEmpty()) {
            return List.of(CheckedValue.of("", 1));
        }
        double fixed = posts.stream()
                .filter(x -> x.passage().kind() == Passage.Kind.CLAMPED)
                .count();
        return List.of(CheckedValue.of("", fixed / posts.size()));
    }

    static List<CheckedValue> spanForHeight(CheckedDesign s) {
        List<CheckedValue> list = new ArrayList<>();
        OptionalDouble floor = s.design().workingFloor();
        for (int i = 1; i <= s.line().spans(); i++) {
            OptionalDouble below = s.highestBelow(i);
            if (floor.isEmpty()) {
                list.add(CheckedValue.missing(
                        "span " + i, "the elevation of the working floor that carries the posts is not given"));
            } else if (below.isEmpty()) {
                list.add(CheckedValue.missing("span " + i, "no obstruction is given below it"));
            } else {
                double height = floor.getAsDouble() - below.getAsDouble();
                double allowed = Math.max(0, 40.0 / 11.0 * (height - 4));
                double run = s.line().run(i);
                list.add(
                        allowed > 0
                                ? CheckedValue.of("span " + i, run / allowed).shown(allowed, 0, "m")
                                : CheckedValue.of("span " + i, Double.POSITIVE_INFINITY));
            }
        }
        return list;
    }
}
