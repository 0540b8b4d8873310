package org.lifeline.testing;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Fall;
import org.lifeline.model.Installed;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.DeploymentForce;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.model.cable.LoadElongation;

/**
 * A case as text, a line for each part, so that one that fails can be kept in a file.
 *
 * <p>SI throughout, {@code inf} for rigid or clamped, {@code -} for the free fall that follows from geometry; lines that
 * begin with # say what the case is about. A worker's connection is written as the loading curve on the case's side.
 *
 * <pre>
 * case NAME
 * cable WEIGHT EXPANSION STRAIN TENSION …
 * end X Y Z | post X Y Z FRICTION
 * springs X Y Z                                    (of the support above)
 * absorber INITIAL STOP EXTENSION FORCE …          (of the support above)
 * installed FORM VALUE SPAN TEMPERATURE
 * hanging ATTACHMENT SPAN STATION MASS
 * faller MASS LEVEL HEIGHT device|lanyard LENGTH STOP EXTENSION FORCE …
 * fall ATTACHMENT SPAN STATION FREEFALL
 * at TEMPERATURE SIDE
 * </pre>
 */
public final class CaseText {
    private final StringBuilder text = new StringBuilder();

    private CaseText() {}

    /** Writes a case. */
    public static String write(ArrestCase c) {
        CaseText out = new CaseText();
        out.text.append("case ").append(c.name()).append('\n');
        out.line(c.line());
        out.fall(c.fall(), c.side());
        out.add("at", c.temperature(), c.side());
        return out.text.toString();
    }

    /** Reads a case. */
    public static ArrestCase read(List<String> lines) {
        Shorthand s = new Shorthand("unnamed");
        for (String line : lines) {
            if (line.startsWith("#") || line.isBlank()) {
                continue;
            }
            String[] w = line.strip().split("\\s+");
            switch (w[0]) {
                case "case" -> s = new Shorthand(line.substring("case".length()).strip());
                case "cable" -> s.cable(number(w[1]), number(w[2]), numbers(w, 3));
                case "end" -> s.end(number(w[1]), number(w[2]), number(w[3]));
                case "post" -> s.post(number(w[1]), number(w[2]), number(w[3]), number(w[4]));
                case "springs" -> s.springs(number(w[1]), number(w[2]), number(w[3]));
                case "absorber" -> s.absorber(number(w[1]), number(w[2]), numbers(w, 3));
                case "installed" ->
                    s.installed(Installed.Form.valueOf(w[1]), number(w[2]), Integer.parseInt(w[3]), number(w[4]));
                case "hanging" -> s.hanging(Attachment.valueOf(w[1]), place(w), number(w[4]));
                case "faller" ->
                    s.faller(
                            new double[] {number(w[1]), number(w[2]), number(w[3])},
                            w[4].equals("device"),
                            number(w[5]),
                            numbers(w, 6));
                case "fall" -> s.fall(Attachment.valueOf(w[1]), place(w), number(w[4]));
                case "at" -> {
                    return s.at(number(w[1]), DeploymentForce.valueOf(w[2]));
                }
                default -> throw new IllegalArgumentException("not a line of a case: " + line);
            }
        }
        throw new IllegalArgumentException("the case has no last line: at TEMPERATURE SIDE");
    }

    private static Place place(String[] w) {
        return Place.of(Integer.parseInt(w[2]), number(w[3]));
    }

    private static double number(String word) {
        return switch (word) {
            case "inf" -> Double.POSITIVE_INFINITY;
            case "-" -> Double.NaN;
            default -> Double.parseDouble(word);
        };
    }

    private static double[] numbers(String[] words, int from) {
        return Arrays.stream(words, from, words.length)
                .mapToDouble(CaseText::number)
                .toArray();
    }

    private void add(String word, Object... values) {
        text.append(word);
        for (Object value : values) {
            text.append(' ').append(show(value));
        }
        text.append('\n');
    }

    private static String show(Object value) {
        if (value instanceof Double x) {
            return x.isNaN()
                    ? "-"
                    : x.isInfinite()
                            ? "inf"
                            : x == Math.rint(x) && Math.abs(x) < 1e9
                                    ? String.format(Locale.ROOT, "%.0f", x)
                                    : x.toString();
        }
        return value.toString();
    }

    private static String corners(List<LoadingCurve.Corner> corners) {
        StringBuilder s = new StringBuilder();
        corners.forEach(c -> s.append(s.isEmpty() ? "" : " ")
                .append(show(c.extension()))
                .append(' ')
                .append(show(c.force())));
        return s.toString();
    }

    private void line(Lifeline line) {
        StringBuilder law = new StringBuilder();
        for (LoadElongation.Corner each : line.cable().elongation().corners()) {
            law.append(law.isEmpty() ? "" : " ").append(show(each.strain())).append(' ');
            law.append(show(each.tension()));
        }
        add("cable", line.weightPerLength(), line.cable().thermalExpansion(), law);
        for (Support s : line.supports()) {
            Point p = s.position();
            if (s.isEnd()) {
                add("end", p.x(), p.y(), p.z());
            } else {
                boolean clamped = s.passage().kind() == Passage.Kind.CLAMPED;
                double friction =
                        clamped ? Double.POSITIVE_INFINITY : s.passage().friction();
                add("post", p.x(), p.y(), p.z(), friction);
            }
            if (!s.stiffness().isRigid()) {
                add(
                        "springs",
                        s.stiffness().x(),
                        s.stiffness().y(),
                        s.stiffness().z());
            }
            s.inlineAbsorber()
                    .map(a -> a.curve())
                    .ifPresent(c -> add("absorber", c.initialStiffness(), c.stopStiffness(), stated(c)));
        }
        Installed i = line.installed();
        add("installed", i.form(), i.value(), i.span(), i.temperature());
    }

    /** The corners as they were stated, before the initial stiffness was worked in. */
    private static String stated(LoadingCurve curve) {
        List<LoadingCurve.Corner> corners = curve.corners();
        return curve.firstYieldPiece() == 0
                ? corners(corners)
                : "0 " + show(curve.forceOnPiece(1, 0)) + " " + corners(corners.subList(2, corners.size()));
    }

    private void fall(Fall fall, DeploymentForce side) {
        for (Fall.Hanging h : fall.hanging()) {
            Worker w = h.worker();
            add("hanging", w.attachment(), h.place().span(), h.place().station(), w.mass());
        }
        for (Worker w : fall.fallers()) {
            Connection c = w.connection();
            boolean device = c.kind() == Connection.Kind.SELF_RETRACTING;
            LoadingCurve curve = c.curve(side);
            add(
                    "faller",
                    w.mass(),
                    w.walkingLevel(),
                    w.attachmentHeight(),
                    device ? "device" : "lanyard",
                    c.tautLength(0),
                    curve.stopStiffness(),
                    corners(curve.corners()));
        }
        Place p = fall.place();
        add(
                "fall",
                fall.fallers().get(0).attachment(),
                p.span(),
                p.station(),
                fall.freeFall().orElse(Double.NaN));
    }
}
