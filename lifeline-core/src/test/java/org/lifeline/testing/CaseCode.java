package org.lifeline.testing;

import org.lifeline.base.Point;
import org.lifeline.model.Cable;
import org.lifeline.model.Connection;
import org.lifeline.model.DeploymentForce;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LoadElongation;
import org.lifeline.model.LoadingCurve;
import org.lifeline.model.Passage;
import org.lifeline.model.Place;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;

/** Writes a case as Java code that rebuilds it with {@link Shorthand}. */
final class CaseCode {
    private final StringBuilder text = new StringBuilder();

    private CaseCode() {}

    static String of(ArrestCase c) {
        CaseCode code = new CaseCode();
        code.text.append("new Shorthand(\"").append(c.name()).append("\")\n");
        code.line(c.line());
        code.fall(c.fall(), c.side());
        code.add(".at(%s, DeploymentForce.%s)\n", c.temperature(), c.side());
        return code.text.toString();
    }

    private void add(String format, Object... values) {
        text.append("    ").append(String.format(java.util.Locale.ROOT, format, values));
    }

    private static String number(double x) {
        return Double.isInfinite(x) ? "INF" : Double.toString(x);
    }

    private void line(Lifeline line) {
        Cable c = line.cable();
        StringBuilder law = new StringBuilder();
        for (LoadElongation.Corner each : c.elongation().corners()) {
            law.append(", ").append(each.strain()).append(", ").append(each.tension());
        }
        add(".cable(%s, %s%s)\n", line.weightPerLength(), c.thermalExpansion(), law);
        for (Support s : line.supports()) {
            Point p = s.position();
            String at = number(p.x()) + ", " + number(p.y()) + ", " + number(p.z());
            String passage = s.passage().kind() == Passage.Kind.CLAMPED
                    ? "INF"
                    : number(s.passage().friction());
            add(s.isEnd() ? ".end(%s)" : ".post(%s, %s)", at, passage);
            if (!s.stiffness().isRigid()) {
                text.append(".springs(").append(number(s.stiffness().x())).append(", ");
                text.append(number(s.stiffness().y())).append(", ");
                text.append(number(s.stiffness().z())).append(')');
            }
            s.inlineAbsorber()
                    .ifPresent(a -> text.append(".absorber(")
                            .append(number(a.initialStiffness()))
                            .append(stated(a.curve()))
                            .append(')'));
            text.append('\n');
        }
        add(
                ".installed(Installed.Form.%s, %s, %s, %s)\n",
                line.installed().form(),
                line.installed().value(),
                line.installed().span(),
                line.installed().temperature());
    }

    private static String curve(LoadingCurve curve) {
        StringBuilder s = new StringBuilder(", " + number(curve.stopStiffness()));
        for (LoadingCurve.Corner c : curve.corners()) {
            s.append(", ").append(c.extension()).append(", ").append(c.force());
        }
        return s.toString();
    }

    /** The curve as it was stated, before its initial stiffness was worked in. */
    private static String stated(LoadingCurve curve) {
        if (curve.firstYieldPiece() == 0) {
            return curve(curve);
        }
        StringBuilder s = new StringBuilder(", " + number(curve.stopStiffness()));
        s.append(", 0, ").append(curve.forceOnPiece(1, 0));
        for (LoadingCurve.Corner c : curve.corners().subList(2, curve.corners().size())) {
            s.append(", ").append(c.extension()).append(", ").append(c.force());
        }
        return s.toString();
    }

    private void fall(Fall fall, DeploymentForce side) {
        fall.hanging()
                .forEach(h -> add(
                        ".hanging(%s, %s)\n",
                        place(h.worker(), h.place()), h.worker().mass()));
        for (Worker w : fall.fallers()) {
            Connection c = w.connection();
            boolean device = c.kind() == Connection.Kind.SELF_RETRACTING;
            add(
                    ".faller(%s, %s, %s, %s%s)\n",
                    w.mass(), w.walkingLevel(), device ? "true" : "false", c.tautLength(0), curve(c.curve(side)));
        }
        add(
                ".fall(%s, %s)\n",
                place(fall.fallers().get(0), fall.place()),
                fall.freeFall().isPresent() ? number(fall.freeFall().getAsDouble()) : "Double.NaN");
    }

    private static String place(Worker worker, Place place) {
        return "Attachment." + worker.attachment() + ", " + place.span() + ", " + place.station();
    }
}
