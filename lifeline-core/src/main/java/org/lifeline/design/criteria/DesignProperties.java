package org.lifeline.design.criteria;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.design.envelope.Extreme;
import org.lifeline.design.envelope.Quantity;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;

/** Values that demands take in a design. */
final class DesignProperties {
    private DesignProperties() {}

    /** Fixes the type of a method reference. */
    static Function<CheckedDesign, List<CheckedValue>> of(Function<CheckedDesign, List<CheckedValue>> function) {
        return function;
    }

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
                        : "no obstruction lies below a fall";
            case INTERMEDIATE_ANCHOR_LOAD ->
                s.line().spans() == 1 ? "there is no intermediate anchor" : Strengths.NO_CASE;
            case INLINE_EXTENSION ->
                s.line().supports().stream().noneMatch(x -> x.inlineAbsorber().isPresent())
                        ? "there is no in-line energy absorber"
                        : Strengths.NO_CASE;
            default -> Strengths.NO_CASE;
        };
    }

    static CheckedValue support(CheckedDesign s, String id) {
        if (s.line().supports().stream().noneMatch(x -> x.id().equals(id))) {
            return CheckedValue.missing(id, "no support has this id");
        }
        return s.extremes().onSupport(id).map(CheckedValue::of).orElse(CheckedValue.missing(id, Strengths.NO_CASE));
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
                    "span " + i, Math.atan2(Math.abs(s.line().rise(i)), s.line().run(i))));
        }
        return list;
    }

    static List<CheckedValue> workers(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.design().workers().size()));
    }

    static List<CheckedValue> workersInOneSpan(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.workersInOneSpan()));
    }

    static List<CheckedValue> statedMargin(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.design().clearance().margin()));
    }

    static List<CheckedValue> statedHarnessStretch(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.design().clearance().harnessStretch()));
    }

    static List<CheckedValue> heaviest(CheckedDesign s) {
        return List.of(CheckedValue.of("", s.extremes().masses().high()));
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
        for (int i = 1; i <= s.line().spans(); i++) {
            double below = s.highestBelow(i);
            if (Double.isNaN(below)) {
                list.add(CheckedValue.missing("span " + i, "no obstruction is given below it"));
                continue;
            }
            double height = Math.min(
                            s.line().supports().get(i - 1).position().z(),
                            s.line().supports().get(i).position().z())
                    - below;
            double allowed = Math.max(0, 40.0 / 11.0 * (height - 4));
            double run = s.line().run(i);
            list.add(
                    allowed > 0
                            ? CheckedValue.of("span " + i, run / allowed).shown(allowed, 0, "m")
                            : CheckedValue.of("span " + i, Double.POSITIVE_INFINITY));
        }
        return list;
    }
}
