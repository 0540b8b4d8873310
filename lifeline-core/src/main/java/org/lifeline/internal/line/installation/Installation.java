package org.lifeline.internal.line.installation;

import java.util.List;
import org.lifeline.base.AllowedRange;
import org.lifeline.base.GivenValue;
import org.lifeline.base.InputRule;
import org.lifeline.base.InvalidInputException;
import org.lifeline.base.Violation;
import org.lifeline.internal.catenary.SpanFinder;
import org.lifeline.internal.line.LineState;
import org.lifeline.internal.line.LineSystem;
import org.lifeline.internal.numeric.Elementary;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.internal.numeric.Roots;
import org.lifeline.model.InlineAbsorber;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.cable.LoadElongation;

/**
 * The installed state: the cable runs freely over every intermediate anchor, so its tension T obeys one law along the
 * whole line, T + ∫ε dT = w z + constant (the first integral of the elastic catenary). One number fixes it.
 */
public final class Installation {
    private final Lifeline line;
    private final LoadElongation law;
    private final double w;
    private final int spans;
    private final double[] z;
    private boolean exact = true;

    public Installation(Lifeline line) {
        this.line = line;
        this.law = line.cable().elongation();
        this.w = weight(line);
        this.spans = line.spans();
        this.z = new double[spans + 1];
        for (int i = 0; i <= spans; i++) {
            z[i] = line.supports().get(i).position().z();
        }
    }

    /**
     * Weight per length with which a line is computed: its own; of a weightless cable that is slack as installed next to
     * none, since only the limit of ever lighter cables has a shape. It changes what a load of 1 N does by less than 1e-7.
     *
     * @param line the line
     * @return weight [N/m]
     */
    public static double weight(Lifeline line) {
        double own = line.weightPerLength();
        return own > 0 || !isSlack(line) ? own : InstallationTolerances.NEXT_TO_WEIGHTLESS;
    }

    private static boolean isSlack(Lifeline line) {
        return switch (line.installed().form()) {
            case PRETENSION, HORIZONTAL_TENSION -> false;
            case INITIAL_SAG -> true;
            case UNSTRETCHED_LENGTH -> {
                double chords = 0;
                for (int i = 1; i <= line.spans(); i++) {
                    chords += Elementary.hypot(line.run(i), line.rise(i));
                }
                yield line.installed().value() >= chords;
            }
        };
    }

    /** Looked for at every span of the line, again and again while it is tensioned: here an interrupt ends a long line. */
    private SpanFinder finder(int i) {
        OrderedWork.stopIfInterrupted();
        return new SpanFinder(law, w, line.run(i + 1), line.rise(i + 1));
    }

    /** Fills lengths, references and absorber extensions of a system and returns its installed state. */
    public LineState install(LineSystem system) {
        LineState s = new LineState(spans, 0);
        if (spans == 1) {
            // A single span may hang beyond its least tension; its own number tells which of two shapes it is.
            set(system, s, 0, named(0));
        } else {
            SpanFinder[] found = againstFriction();
            double first = found.length > 0 ? 0 : firstTension();
            for (int i = 0; i < spans; i++) {
                set(system, s, i, found.length > 0 ? found[i] : taut(i, first));
            }
        }
        for (int i = 1; i < spans; i++) {
            s.passage[i] = system.clamped[i] || system.friction[i] > 0 ? LineState.STUCK : LineState.RUNS_ON;
        }
        system.forces.setReference(s);
        for (int e = 0; e < 2; e++) {
            InlineAbsorber a = system.absorbers[e];
            if (a != null) {
                preload(system, s, e, a);
            }
        }
        return s;
    }

    /** Tells whether every span fits to rounding; if not, the whole line is to be refined. */
    public boolean isExact() {
        return exact;
    }

    /** The spans of a line that was tensioned from an end against friction; none where there is no friction. */
    private SpanFinder[] againstFriction() {
        Installed in = line.installed();
        if (in.tensionedFrom().isEmpty() || !TensionedWithFriction.matters(line)) {
            return new SpanFinder[0];
        }
        TensionedWithFriction t =
                new TensionedWithFriction(line, w, in.tensionedFrom().get());
        int k = in.span() - 1;
        SpanFinder[] found =
                switch (in.form()) {
                    case PRETENSION -> t.march(in.value());
                    case HORIZONTAL_TENSION, INITIAL_SAG -> {
                        SpanFinder f = named(k);
                        SpanFinder[] all = t.ofStartTension(k, Math.sqrt(f.h * f.h + f.v * f.v));
                        // The same tension belongs to a taut and to a slack span.
                        boolean same =
                                all != null && Math.abs(all[k].s - f.s) <= InstallationTolerances.SAME_LENGTH * f.s;
                        yield same ? all : null;
                    }
                    case UNSTRETCHED_LENGTH -> t.ofLength(in.value(), fromLength(in.value()));
                };
        if (found == null) {
            throw refuse("is too slack: tensioned against friction, the cable would run together into one span");
        }
        return found;
    }

    private void preload(LineSystem system, LineState s, int e, InlineAbsorber a) {
        double tension = e == 0 ? system.forces.endSideTension(s, 0) : system.forces.startSideTension(s, spans);
        double activation = a.curve().activationForce();
        int support = e == 0 ? 0 : spans;
        if (!(activation == 0 || tension < activation * (1 - InstallationTolerances.ROUNDING))) {
            throw new InvalidInputException(List.of(Violation.of(
                            "support[" + support + "].inlineAbsorber",
                            GivenValue.number(activation, "N"),
                            InputRule.ABSORBER_ACTIVE_AT_INSTALLATION,
                            tension)
                    .allowing(AllowedRange.above(tension))));
        }
        double extension;
        if (activation == 0) {
            extension = a.curve().nearExtension(tension);
            s.yielded[e] = Math.min(extension, a.curve().maximumExtension());
            s.yielding[e] = true;
            s.piece[e] = a.curve().piece(extension);
        } else {
            extension = tension / a.initialStiffness();
        }
        s.extension[e] = extension;
        system.installedExtension[e] = extension;
    }

    private void set(LineSystem system, LineState s, int i, SpanFinder f) {
        double run = line.run(i + 1);
        double ux = (system.px[i + 1] - system.px[i]) / run;
        double uy = (system.py[i + 1] - system.py[i]) / run;
        s.tension[3 * i] = f.h * ux;
        s.tension[3 * i + 1] = f.h * uy;
        s.tension[3 * i + 2] = f.v;
        system.length[i] = f.s;
        exact &= f.exact;
    }

    /** The named span from the number that fixes the installed state. */
    private SpanFinder named(int i) {
        Installed in = line.installed();
        SpanFinder.Known known =
                switch (in.form()) {
                    case PRETENSION -> SpanFinder.Known.START_TENSION;
                    case HORIZONTAL_TENSION -> SpanFinder.Known.HORIZONTAL_TENSION;
                    case INITIAL_SAG -> SpanFinder.Known.SAG;
                    case UNSTRETCHED_LENGTH -> SpanFinder.Known.UNSTRETCHED_LENGTH;
                };
        SpanFinder f = finder(i);
        if (!f.find(known, in.value())) {
            throw refuse(
                    in.form() == Installed.Form.PRETENSION
                            ? "must be at least " + f.leastStartTension() + " N for the span to hang"
                            : "no cable of this weight can hang so in span " + (i + 1));
        }
        return f;
    }

    private SpanFinder taut(int i, double first) {
        SpanFinder f = finder(i);
        double tension = tensionAt(first, 0, i);
        if (!(tension > 0) || !f.find(SpanFinder.Known.START_TENSION, tension)) {
            throw refuse("is too slack: the cable would run together into one span; the tension at the first support"
                    + " must be at least " + leastFirstTension() + " N, and here it is " + first + " N");
        }
        return f;
    }

    /** Tension at the first support of the line. */
    private double firstTension() {
        Installed in = line.installed();
        return switch (in.form()) {
            case PRETENSION -> in.value();
            case HORIZONTAL_TENSION, INITIAL_SAG -> {
                int k = in.span() - 1;
                SpanFinder f = named(k);
                double first = tensionAt(Math.sqrt(f.h * f.h + f.v * f.v), k, 0);
                double length = taut(k, first).s;
                if (Math.abs(length - f.s) > InstallationTolerances.SAME_LENGTH * f.s) {
                    throw refuse("is too slack: the cable of the other spans would run into span " + (k + 1));
                }
                yield first;
            }
            case UNSTRETCHED_LENGTH -> fromLength(in.value());
        };
    }

    private double fromLength(double length) {
        double low = Math.max(
                leastFirstTension() * (1 + InstallationTolerances.ABOVE_LEAST), InstallationTolerances.ABOVE_LEAST);
        double most = totalLength(low);
        if (length > most) {
            throw refuse("must be at most " + most + " m, or the cable would run together into one span");
        }
        double high = 2 * low + 1;
        while (totalLength(high) > length) {
            high *= 4;
            if (high > 1e15) {
                throw refuse("is shorter than the cable can be stretched");
            }
        }
        double root = Roots.bracketed(
                "tension from the unstretched length",
                x -> totalLength(StrictMath.exp(x)) - length,
                StrictMath.log(low),
                StrictMath.log(high));
        return StrictMath.exp(root);
    }

    private double totalLength(double first) {
        double sum = 0;
        for (int i = 0; i < spans; i++) {
            sum += taut(i, first).s;
        }
        return sum;
    }

    /** Least tension at the first support at which every span hangs on its taut side. */
    private double leastFirstTension() {
        double least = 0;
        for (int i = 0; i < spans; i++) {
            least = Math.max(least, tensionAt(finder(i).leastStartTension(), i, 0));
        }
        return least;
    }

    private InvalidInputException refuse(String rule) {
        Installed in = line.installed();
        return switch (in.form()) {
            case PRETENSION -> refusal("pretension", "N", rule);
            case HORIZONTAL_TENSION -> refusal("horizontalTension", "N", rule);
            case INITIAL_SAG -> refusal("initialSag", "m", rule);
            case UNSTRETCHED_LENGTH -> refusal("unstretchedLength", "m", rule);
        };
    }

    private InvalidInputException refusal(String key, String unit, String rule) {
        GivenValue value = GivenValue.number(line.installed().value(), unit);
        return new InvalidInputException(
                List.of(Violation.of("installed." + key, value, InputRule.INSTALLATION_NOT_FOUND, rule)));
    }

    /** Tension at one support from that at another while the cable runs freely between them. */
    private double tensionAt(double tension, int from, int to) {
        if (from == to) {
            return tension;
        }
        return inverse(tension + law.complementaryEnergy(tension) + w * (z[to] - z[from]));
    }

    /**
     * The tension T at which T + ∫ε dT has a value; not above zero where there is none. The sum is convex and not less than
     * T, so that Newton's steps from the value come down to the root, until rounding turns them back.
     */
    private double inverse(double value) {
        double t = value;
        double next = closer(t, value);
        while (next > 0 && next < t) {
            t = next;
            next = closer(t, value);
        }
        return t;
    }

    private double closer(double t, double value) {
        return t - (t + law.complementaryEnergy(t) - value) / (1 + law.strain(t));
    }
}
