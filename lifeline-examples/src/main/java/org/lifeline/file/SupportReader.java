package org.lifeline.file;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.InputRule;
import org.lifeline.base.Point;
import org.lifeline.base.unit.Dimension;
import org.lifeline.file.Fields.Range;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Passage;
import org.lifeline.model.Post;
import org.lifeline.model.Stiffness;
import org.lifeline.model.Support;
import org.lifeline.model.absorber.LoadingCurve;

/** Reads one of {@code supports}. */
final class SupportReader {
    private static final String END = "end";

    private SupportReader() {}

    /** Reads a support; {@code outer} if it is the first or the last. */
    static @Nullable Support read(Fields f, boolean outer) {
        String id = f.requiredText("id");
        if (id != null && id.isBlank()) {
            f.findings().bad(f.path("id"), f.node("id"), InputRule.BLANK);
        }
        f.required("type");
        String type = f.choice("type", List.of(END, "intermediate"));
        if (type != null && type.equals(END) != outer) {
            f.findings()
                    .bad(
                            f.path("type"),
                            f.node("type"),
                            outer ? InputRule.END_ANCHOR_NEEDED : InputRule.END_ANCHOR_INSIDE);
        }
        Point position = position(f);
        double capacity = f.quantity("capacity", Dimension.FORCE, Range.POSITIVE);
        Passage passage = passage(f);
        if (END.equals(type) && f.has("passage")) {
            f.findings().bad(f.path("passage"), f.node("passage"), FileRule.PASSAGE_AT_END_ANCHOR);
        }
        Stiffness stiffness = stiffness(f);
        Post post = post(f);
        if (f.has("stiffness") && post != null && post.hasSection()) {
            f.findings().bad(f.path("stiffness"), f.node("stiffness"), FileRule.GIVEN_BY_SECTION);
        }
        InlineAbsorber absorber = absorber(f);
        if ("intermediate".equals(type) && f.has("inlineAbsorber")) {
            f.findings().bad(f.path("inlineAbsorber"), f.node("inlineAbsorber"), InputRule.INLINE_ABSORBER_INSIDE);
        }
        f.close();
        return f.build(() -> {
            if (id == null || position == null || stiffness == null || passage == null) {
                throw new IllegalStateException("unreachable: what is missing has been reported");
            }
            Support s = END.equals(type) ? Support.end(id, position) : Support.intermediate(id, position, passage);
            s = s.withStiffness(stiffness);
            s = absorber == null ? s : s.withInlineAbsorber(absorber);
            s = post == null ? s : s.withPost(post);
            return Double.isNaN(capacity) ? s : s.withCapacity(capacity);
        });
    }

    private static @Nullable Point position(Fields f) {
        JsonNode value = f.required("position");
        if (value == null) {
            return null;
        }
        String path = f.path("position");
        if (!value.isArray() || value.size() != 3) {
            f.findings().bad(path, value, FileRule.NOT_A_POSITION);
            return null;
        }
        double[] c = new double[3];
        for (int i = 0; i < 3; i++) {
            c[i] = f.quantity(value.get(i), path + "[" + i + "]", Dimension.LENGTH, Range.ANY);
        }
        return Point.of(c[0], c[1], c[2]);
    }

    private static @Nullable Passage passage(Fields f) {
        JsonNode value = f.value("passage");
        if (value == null) {
            return Passage.free();
        }
        if (value.isObject()) {
            Fields friction = f.object("passage");
            if (friction == null) {
                return null;
            }
            friction.required("friction");
            double coefficient = friction.number("friction", Range.NOT_NEGATIVE);
            friction.close();
            return friction.build(() -> Passage.friction(coefficient));
        }
        if (!value.isTextual()) {
            f.findings().bad(f.path("passage"), value, FileRule.NOT_A_PASSAGE);
            return null;
        }
        String text = f.choice("passage", List.of("free", "clamped"));
        return text == null ? null : text.equals("free") ? Passage.free() : Passage.clamped();
    }

    private static @Nullable Stiffness stiffness(Fields f) {
        Fields s = f.object("stiffness");
        if (s == null) {
            return f.has("stiffness") ? null : Stiffness.rigid();
        }
        double[] k = new double[3];
        String[] axes = {"x", "y", "z"};
        for (int i = 0; i < 3; i++) {
            double read = s.quantity(axes[i], Dimension.FORCE_PER_LENGTH, Range.POSITIVE);
            k[i] = Double.isNaN(read) ? Double.POSITIVE_INFINITY : read;
        }
        s.close();
        return s.build(() -> new Stiffness(k[0], k[1], k[2]));
    }

    /** The post that carries the support. */
    private static @Nullable Post post(Fields f) {
        Fields p = f.object("post");
        if (p == null) {
            return null;
        }
        double height = p.requiredQuantity("height", Dimension.LENGTH, Range.POSITIVE);
        double modulus = p.quantity("elasticModulus", Dimension.STRESS, Range.POSITIVE);
        double[] area = xy(p, "secondMomentOfArea", Dimension.SECOND_MOMENT, Range.POSITIVE);
        double[] resistance = xy(p, "elasticMomentOfResistance", Dimension.MOMENT, Range.POSITIVE);
        double[] off = xy(p, "eccentricity", Dimension.LENGTH, Range.ANY);
        Fields axes = p.object("eccentricity");
        Post.Eccentricity seat =
                axes == null ? null : axes.build(() -> new Post.Eccentricity(orZero(off[0]), orZero(off[1])));
        p.close();
        return p.build(() -> {
            Post.Builder b = Post.ofHeight(height);
            if (seat != null) {
                b.eccentricity(seat);
            }
            set(modulus, b::elasticModulus);
            set(area[0], b::secondMomentX);
            set(area[1], b::secondMomentY);
            set(resistance[0], b::momentOfResistanceX);
            set(resistance[1], b::momentOfResistanceY);
            return b.build();
        });
    }

    private static double[] xy(Fields f, String key, Dimension dimension, Range range) {
        Fields o = f.object(key);
        if (o == null) {
            return new double[] {Double.NaN, Double.NaN};
        }
        if (o.count("x", "y") == 0) {
            f.findings().bad(o.path(), f.node(key), FileRule.AXIS_NEEDED);
        }
        double[] values = {o.quantity("x", dimension, range), o.quantity("y", dimension, range)};
        o.close();
        return values;
    }

    private static double orZero(double value) {
        return Double.isNaN(value) ? 0 : value;
    }

    private static void set(double value, DoubleConsumer setter) {
        if (!Double.isNaN(value)) {
            setter.accept(value);
        }
    }

    private static @Nullable InlineAbsorber absorber(Fields f) {
        Fields a = f.object("inlineAbsorber");
        if (a == null) {
            return null;
        }
        a.required("curve");
        double initial = orRigid(a.quantity("initialStiffness", Dimension.FORCE_PER_LENGTH, Range.POSITIVE));
        double stop = orRigid(a.quantity("stopStiffness", Dimension.FORCE_PER_LENGTH, Range.POSITIVE));
        List<LoadingCurve.Corner> corners = corners(a.pairs("curve", Dimension.LENGTH, Dimension.FORCE));
        a.close();
        return a.build(() -> InlineAbsorber.of(LoadingCurve.through(corners, initial, stop)));
    }

    static List<LoadingCurve.Corner> corners(List<double[]> pairs) {
        List<LoadingCurve.Corner> list = new ArrayList<>();
        pairs.forEach(p -> list.add(new LoadingCurve.Corner(p[0], p[1])));
        return list;
    }

    static double orRigid(double stiffness) {
        return Double.isNaN(stiffness) ? Double.POSITIVE_INFINITY : stiffness;
    }
}
