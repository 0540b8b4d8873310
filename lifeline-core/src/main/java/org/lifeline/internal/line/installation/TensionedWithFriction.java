package org.lifeline.internal.line.installation;

import java.util.function.DoubleUnaryOperator;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.NoEquilibriumException;
import org.lifeline.internal.catenary.SpanFinder;
import org.lifeline.internal.numeric.Elementary;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.cable.LoadElongation;

/**
 * The spans of a line that was tensioned from one of its ends against the friction of its supports: cable slipped over each
 * of them toward that end, so that the tension falls by e^(−μθ) at each, away from it (capstan rule, Euler 1769; Eytelwein
 * 1808), θ the angle that the cable turns there in space. From the tension at the first support the spans follow one by one; the
 * angle at a support depends on the span behind it and is found by iteration.
 */
final class TensionedWithFriction {
    private final Lifeline line;
    private final LoadElongation law;
    private final double weight;

    /** Sign of the logarithm of the ratio of tensions, behind over before: −1 where tensioned from the first end. */
    private final int sign;

    TensionedWithFriction(Lifeline line, double weight, Installed.TensioningEnd end) {
        this.line = line;
        this.law = line.cable().elongation();
        this.weight = weight;
        this.sign = end == Installed.TensioningEnd.FIRST ? -1 : 1;
    }

    /** Tells whether any support holds the cable back while it is tensioned; clamps are closed afterwards. */
    static boolean matters(Lifeline line) {
        return line.supports().stream().anyMatch(s -> s.passage().kind() == Passage.Kind.FRICTION);
    }

    private SpanFinder finder(int i) {
        return new SpanFinder(law, weight, line.run(i + 1), line.rise(i + 1));
    }

    /** The spans from the tension at the first support [N]; null where one of them cannot hang so. */
    SpanFinder @Nullable [] march(double first) {
        SpanFinder[] spans = new SpanFinder[line.spans()];
        double tension = first;
        for (int i = 0; i < spans.length; i++) {
            SpanFinder f = i == 0 ? found(0, tension) : behind(i, spans[i - 1]);
            if (f == null) {
                return null;
            }
            spans[i] = f;
        }
        return spans;
    }

    /** The span at a tension at its start; null where the cable is too slack for it, or so near that none is found. */
    private @Nullable SpanFinder found(int i, double tension) {
        SpanFinder f = finder(i);
        try {
            return tension > 0 && f.find(SpanFinder.Known.START_TENSION, tension) ? f : null;
        } catch (NoEquilibriumException atTheLeastTension) {
            return null;
        }
    }

    /** The span behind a support, from the span before it. */
    private @Nullable SpanFinder behind(int i, SpanFinder before) {
        Support s = line.supports().get(i);
        double friction =
                s.passage().kind() == Passage.Kind.FRICTION ? s.passage().friction() : 0;
        double arriving = Elementary.hypot(before.h, before.v + weight * before.s);
        if (friction == 0) {
            return found(i, arriving);
        }
        double angle = 0;
        for (int k = 0; k < InstallationTolerances.MOST_ANGLES; k++) {
            SpanFinder f = found(i, arriving * StrictMath.exp(sign * friction * angle));
            if (f == null) {
                return null;
            }
            double turned = angle(i, before, f);
            if (Math.abs(turned - angle) <= InstallationTolerances.SAME_ANGLE) {
                return f;
            }
            angle = turned;
        }
        return found(i, arriving * StrictMath.exp(sign * friction * angle));
    }

    /** Angle that the cable turns at a support [rad]. */
    private double angle(int i, SpanFinder before, SpanFinder behind) {
        double ax = direction(i, true) * before.h;
        double ay = direction(i, false) * before.h;
        double az = before.v + weight * before.s;
        double bx = direction(i + 1, true) * behind.h;
        double by = direction(i + 1, false) * behind.h;
        double bz = behind.v;
        double cx = ay * bz - az * by;
        double cy = az * bx - ax * bz;
        double cz = ax * by - ay * bx;
        return StrictMath.atan2(Math.sqrt(cx * cx + cy * cy + cz * cz), ax * bx + ay * by + az * bz);
    }

    /** Component of the horizontal direction of a span, counted from 1 [-]. */
    private double direction(int span, boolean x) {
        var a = line.supports().get(span - 1).position();
        var b = line.supports().get(span).position();
        return (x ? b.x() - a.x() : b.y() - a.y()) / line.run(span);
    }

    /** The spans at which the total unstretched length has a value [m]; null where there are none. */
    SpanFinder @Nullable [] ofLength(double length, double near) {
        return solved(near, first -> {
            SpanFinder[] spans = march(first);
            if (spans == null) {
                return -1; // too slack: too long
            }
            double sum = 0;
            for (SpanFinder each : spans) {
                sum += each.s;
            }
            return (length - sum) / length;
        });
    }

    /** The spans at which one of them, from 0, has a tension at its start [N]; null where there are none. */
    SpanFinder @Nullable [] ofStartTension(int span, double tension) {
        return solved(tension, first -> {
            SpanFinder[] spans = march(first);
            return spans == null ? -1 : StrictMath.log(Elementary.hypot(spans[span].h, spans[span].v) / tension);
        });
    }

    /** The spans at the root of a function of the first tension that rises with it. */
    private SpanFinder @Nullable [] solved(double near, DoubleUnaryOperator f) {
        DoubleUnaryOperator byLog = x -> f.applyAsDouble(StrictMath.exp(x));
        double low = StrictMath.log(near);
        double high = low;
        double step = InstallationTolerances.FIRST_STEP;
        for (int k = 0; k < InstallationTolerances.MOST_STEPS && byLog.applyAsDouble(low) > 0; k++) {
            low -= step;
            step *= 2;
        }
        step = InstallationTolerances.FIRST_STEP;
        for (int k = 0; k < InstallationTolerances.MOST_STEPS && byLog.applyAsDouble(high) < 0; k++) {
            high += step;
            step *= 2;
        }
        if (byLog.applyAsDouble(low) > 0 || byLog.applyAsDouble(high) < 0) {
            return null;
        }
        double root = low == high ? low : Roots.bracketed("tension at the first support", byLog, low, high);
        boolean met = Math.abs(byLog.applyAsDouble(root)) <= InstallationTolerances.SAME_LENGTH;
        return met ? march(StrictMath.exp(root)) : null;
    }
}
