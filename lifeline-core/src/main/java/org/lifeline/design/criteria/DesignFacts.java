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
final class DesignFacts {
    private DesignFacts() {}

    /** Fixes the type of a method reference. */
    static Function<Situation, List<Item>> of(Function<Situation, List<Item>> function) {
        return function;
    }

    static Item quantity(Situation s, Quantity q) {
        Optional<Extreme> e = s.extremes().of(q);
        if (e.isEmpty()) {
            return Item.missing("", absent(s, q));
        }
        Item item = Item.of(e.get());
        // A margin is shown as what it is the difference of: required against available below the line.
        return q == Quantity.CLEARANCE_MARGIN
                ? item.shown(
                        1,
                        Quantity.REQUIRED_BELOW_LINE.value(
                                e.get().arrest(), s.design().modelFactors()),
                        "m")
                : item;
    }

    private static String absent(Situation s, Quantity q) {
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

    static Item support(Situation s, String id) {
        if (s.line().supports().stream().noneMatch(x -> x.id().equals(id))) {
            return Item.missing(id, "no support has this id");
        }
        return s.extremes().onSupport(id).map(Item::of).orElse(Item.missing(id, Strengths.NO_CASE));
    }

    /** What is left below the feet at the lowest point; shown as needed against available below the line. */
    static List<Item> freeHeight(Situation s) {
        Optional<Extreme> e = s.extremes().of(Quantity.CLEARANCE_MARGIN);
        if (e.isEmpty()) {
            return List.of(Item.missing("", absent(s, Quantity.CLEARANCE_MARGIN)));
        }
        double margin = s.design().clearance().margin();
        double needed =
                Quantity.REQUIRED_BELOW_LINE.value(e.get().arrest(), s.design().modelFactors()) - margin;
        return List.of(Item.of(e.get()).withValue(e.get().value() + margin).shown(1, needed, "m"));
    }

    static List<Item> diameter(Situation s) {
        return List.of(
                s.line().cable().diameter().isPresent()
                        ? Item.of("cable", s.line().cable().diameter().getAsDouble())
                        : Item.missing("cable", "its diameter is not given"));
    }

    static List<Item> spans(Situation s) {
        List<Item> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            list.add(Item.of("span " + i, s.line().run(i)));
        }
        return list;
    }

    static List<Item> length(Situation s) {
        return List.of(Item.of("", s.length()));
    }

    static List<Item> numberOfSpans(Situation s) {
        return List.of(Item.of("", s.line().spans()));
    }

    static List<Item> sags(Situation s, double times) {
        LineEquilibrium installed = s.installed();
        List<Item> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            list.add(Item.of(
                    "span " + i, times * installed.span(i).sag() / s.line().run(i)));
        }
        return list;
    }

    static List<Item> chords(Situation s) {
        List<Item> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            list.add(Item.of(
                    "span " + i, Math.atan2(Math.abs(s.line().rise(i)), s.line().run(i))));
        }
        return list;
    }

    static List<Item> workers(Situation s) {
        return List.of(Item.of("", s.design().workers().size()));
    }

    static List<Item> workersInOneSpan(Situation s) {
        return List.of(Item.of("", s.workersInOneSpan()));
    }

    static List<Item> statedMargin(Situation s) {
        return List.of(Item.of("", s.design().clearance().margin()));
    }

    static List<Item> statedHarnessStretch(Situation s) {
        return List.of(Item.of("", s.design().clearance().harnessStretch()));
    }

    static List<Item> heaviest(Situation s) {
        return List.of(Item.of("", s.extremes().masses().high()));
    }

    static List<Item> fixedPosts(Situation s) {
        List<Support> posts =
                s.line().supports().stream().filter(x -> !x.isEnd()).toList();
        if (posts.isEmpty()) {
            return List.of(Item.of("", 1));
        }
        double fixed = posts.stream()
                .filter(x -> x.passage().kind() == Passage.Kind.CLAMPED)
                .count();
        return List.of(Item.of("", fixed / posts.size()));
    }

    static List<Item> spanForHeight(Situation s) {
        List<Item> list = new ArrayList<>();
        for (int i = 1; i <= s.line().spans(); i++) {
            double below = s.highestBelow(i);
            if (Double.isNaN(below)) {
                list.add(Item.missing("span " + i, "no obstruction is given below it"));
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
                            ? Item.of("span " + i, run / allowed).shown(allowed, 0, "m")
                            : Item.of("span " + i, Double.POSITIVE_INFINITY));
        }
        return list;
    }
}
