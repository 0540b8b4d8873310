package org.lifeline.verify;

import java.util.List;
import org.lifeline.base.PlausibleRange;
import org.lifeline.base.Point;
import org.lifeline.model.Attachment;
import org.lifeline.model.Connection;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;
import org.lifeline.model.absorber.LoadingCurve;
import org.lifeline.verify.state.ArrestNumbers;
import org.lifeline.verify.state.CableIntegration;
import org.lifeline.verify.state.LoadingTable;
import org.lifeline.verify.state.MaterialPoints;
import org.lifeline.verify.state.SpanNumbers;
import org.lifeline.verify.state.StateNumbers;

/** The faller's side of an arrest: free fall, connecting subsystem, places of the attachment, derived distances. */
final class FallChecks {
    private final ArrestNumbers arrest;
    private final StateNumbers installed;
    private final CableIntegration integration;
    private final CheckLog log;

    FallChecks(ArrestNumbers arrest, StateNumbers installed, CableIntegration integration, CheckLog log) {
        this.arrest = arrest;
        this.installed = installed;
        this.integration = integration;
        this.log = log;
    }

    void check() {
        places();
        double longest = arrest.fall().fallers().stream()
                .mapToDouble(w -> freeFall(arrest, w))
                .max()
                .orElse(Double.NaN);
        log.add(Check.FREE_FALL, "free fall", Math.abs(arrest.freeFall() - longest) / arrest.levelScale());
        log.add(Check.PEAK, "lowest point", Deviation.over(arrest.weight(), arrest.lineLoad()) / arrest.weight());
        connection();
        distances();
    }

    /**
     * Vertical distance from line to harness attachment when the subsystem is taut [m]: its length from the design, or
     * what it spans already where that is longer.
     */
    static double tautLength(Worker worker, double lineElevation) {
        Connection c = worker.connection();
        double above = lineElevation - worker.harnessElevation();
        double stated = c.tautLength(0);
        double length = c.kind() == Connection.Kind.SELF_RETRACTING ? Math.abs(above) + stated : stated;
        return Math.max(length, above);
    }

    /** Free fall of one worker [m]: stated, or from taut length and heights. */
    static double freeFall(ArrestNumbers arrest, Worker worker) {
        double line = arrest.attachmentBefore().z();
        double fromGeometry = worker.harnessElevation() - (line - tautLength(worker, line));
        return arrest.fall().freeFall().orElse(fromGeometry);
    }

    private void places() {
        double chord = arrest.peak().chord(span());
        log.add(Check.ATTACHMENT_BEFORE, "before", arrest.attachmentBefore().distance(attachment()) / chord);
        int last = arrest.peak().loads().size() - 1;
        log.add(
                Check.ATTACHMENT_AT_PEAK,
                "peak",
                arrest.attachmentAtPeak()
                                .distance(arrest.peak().loads().get(last).point())
                        / chord);
    }

    /**
     * Where the attachment is on the line before the fall: a gripped one at the material point that hung at the station
     * in the installed state, unless that has left the span; a free-running one at the station; one at a support where
     * that is.
     */
    private Point attachment() {
        Place place = arrest.fall().place();
        if (place.isAtSupport()) {
            int support = arrest.before().line().supportOf(place);
            return arrest.before()
                    .line()
                    .supports()
                    .get(support)
                    .position()
                    .plus(arrest.before().supports().get(support).displacement());
        }
        MaterialPoints now = new MaterialPoints(arrest.before(), integration);
        if (arrest.attachment() == Attachment.GRIPPED) {
            double held = new MaterialPoints(installed, integration).lengthTo(place);
            if (now.isInSpan(place.span(), held)) {
                return now.at(place.span(), held);
            }
        }
        return now.pointAt(place);
    }

    /** The loading curve of one who falls; without a temperature that could be one, that of all conditions together. */
    static LoadingCurve curveOf(Worker worker, ArrestNumbers arrest) {
        double t = arrest.peak().temperature();
        boolean possible = t > PlausibleRange.TEMPERATURE.lowest() && t < PlausibleRange.TEMPERATURE.highest();
        Connection c = worker.connection();
        return possible ? c.curve(arrest.side(), t) : c.curve(arrest.side());
    }

    private int span() {
        return arrest.peak().line().spanOf(arrest.fall().place());
    }

    private void connection() {
        double p = arrest.lineLoad();
        List<Worker> fallers = arrest.fall().fallers();
        double lower = 0;
        double upper = 0;
        double least = 0;
        double greatest = 0;
        double most = 0;
        double largest = 0;
        boolean over = false;
        boolean atEnd = false;
        for (int i = 0; i < fallers.size(); i++) {
            Worker w = fallers.get(i);
            double x = arrest.deployments().get(i);
            largest = Math.max(largest, x);
            LoadingCurve stated = curveOf(w, arrest);
            LoadingTable curve = new LoadingTable(stated, integration.quadrature());
            lower += curve.lower(x);
            upper += curve.upper(x);
            // The last digit of the deployment is some force on a stop that is next to rigid.
            least += Math.min(curve.lower(x), curve.lower(x - Math.ulp(x)));
            greatest += Math.max(curve.upper(x), curve.upper(x + Math.ulp(x)));
            most = Math.max(most, curve.lower(x));
            over |= x > w.connection().maximumExtension();
            atEnd |= x == w.connection().maximumExtension();
        }
        log.add(Check.DERIVED, "largest deployment", Math.abs(largest - arrest.deployment()) / arrest.levelScale());
        double outside = Deviation.over(p, greatest) + Deviation.over(least, p);
        log.add(Check.CONNECTION_FORCE, "connecting subsystem", outside / p);
        log.add(Check.ARREST_FORCE, "worker", arrestForce(lower, upper, most));
        double limit = log.limit(Check.CONNECTION_FORCE);
        boolean mayBe = over || (atEnd && p >= lower * (1 - limit));
        boolean mustBe = over || (atEnd && p > lower * (1 + limit));
        boolean wrong = arrest.bottomedOut() ? !mayBe : mustBe;
        log.add(Check.BOTTOMED_OUT, "connecting subsystem", wrong ? 1 : 0);
    }

    /** One worker takes all; several share one extension, so each takes the force of the own curve. */
    private double arrestForce(double lower, double upper, double most) {
        double p = arrest.lineLoad();
        double force = arrest.arrestForce();
        int n = arrest.fall().fallers().size();
        if (n == 1) {
            return Math.abs(force - p) / p;
        }
        if (lower == upper) {
            return Math.abs(force - most * p / lower) / p;
        }
        return (Deviation.over(force, p) + Deviation.over(p / n, force)) / p;
    }

    private void distances() {
        ArrestNumbers.Distances d = arrest.distances();
        SpanNumbers span = arrest.peak().span(span());
        Point at = arrest.attachmentAtPeak();
        double run = span.first().horizontalDistance(span.second());
        double share = MaterialPoints.along(span, at) / run;
        double chord =
                span.first().z() + share * (span.second().z() - span.first().z());
        derived("sag", d.sag(), chord - at.z());
        derived("descent", d.lineDescent(), arrest.descent());
        derived("place of the load", d.loadX(), Math.abs(share * run));
        double without = arrest.freeFall() + arrest.deployment() + arrest.descent();
        log.add(
                Check.DERIVED,
                "total fall distance",
                Deviation.over(without, d.totalFallDistance()) / arrest.levelScale());
        int supports = arrest.peak().supports().size();
        if (d.slip().size() != supports) {
            log.add(Check.DERIVED, "number of slips", 1);
        }
        for (int i = 0; i < Math.min(d.slip().size(), supports); i++) {
            double moved = arrest.peak().supports().get(i).slip()
                    - arrest.before().supports().get(i).slip();
            boolean ahead = i >= span();
            derived("slip " + arrest.peak().supports().get(i).id(), d.slip().get(i), ahead ? moved : -moved);
        }
    }

    private void derived(String where, double value, double expected) {
        log.add(Check.DERIVED, where, Math.abs(value - expected) / arrest.levelScale());
    }
}
