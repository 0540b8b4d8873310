package org.lifeline.report.picture;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.state.LoadPosition;
import org.lifeline.internal.svg.Pen;
import org.lifeline.internal.svg.Spot;
import org.lifeline.internal.svg.SvgCanvas;
import org.lifeline.internal.svg.TextWidth;
import org.lifeline.model.Place;
import org.lifeline.model.Worker;

/** Draws the workers of an arrest: those who hang on the line, the one before the fall and at the lowest point. */
final class WorkerFigures {
    private static final double HANGING_ARROW = 44;
    private static final double BESIDE = 16;
    private static final double BESIDE_WORKER = 8;
    private static final double ZIGZAG = 4;
    private static final double ZIGZAG_STEP = 6;
    private static final double ATTACHMENT = 4;

    private final ArrestResult arrest;
    private final DevelopedElevation elevation;
    private final SvgCanvas c;

    WorkerFigures(ArrestResult arrest, DevelopedElevation elevation, SvgCanvas c) {
        this.arrest = arrest;
        this.elevation = elevation;
        this.c = c;
    }

    /** Distance of a load along the line [m]; a load at a support is at the distance of the support. */
    double along(LoadPosition load) {
        return load.span() > 0
                ? elevation.along(load.span(), load.point())
                : arrest.line().along(Place.atSupport(load.restsOn().orElseThrow()));
    }

    void draw() {
        hanging();
        standing();
        fallen();
    }

    private void hanging() {
        int n = arrest.fall().hanging().size();
        for (int i = 0; i < n; i++) {
            LoadPosition load = arrest.peak().loads().get(i);
            double lx = elevation.px(along(load));
            double lz = elevation.pz(load.point().z());
            c.arrow(Pen.FORCE, lx, lz, lx, lz + HANGING_ARROW);
            String name = TextWidth.cut(arrest.fall().hanging().get(i).worker().id(), 90);
            c.text(lx + 7, lz + 18, "start", name + " hangs");
        }
    }

    private void standing() {
        Worker w = arrest.clearanceWorker();
        double sx = elevation.px(elevation.along(arrest.span(), arrest.attachmentBefore()));
        double beside = sx - BESIDE;
        double harness = elevation.pz(w.harnessElevation());
        figure(Pen.GHOST, beside, harness, elevation.pz(w.walkingLevel()));
        c.line(Pen.GHOST, sx, elevation.pz(arrest.attachmentBefore().z()), beside, harness);
    }

    private void fallen() {
        List<ClearanceRow> rows = arrest.clearance().rows();
        double fx = elevation.px(elevation.along(arrest.span(), arrest.attachmentAtPeak()));
        double taut = elevation.pz(rows.get(2).elevation());
        double torn = elevation.pz(rows.get(3).elevation());
        double harness = elevation.pz(rows.get(4).elevation());
        double feet = elevation.pz(rows.get(5).elevation());
        double start = elevation.pz(arrest.attachmentAtPeak().z());
        c.dot(Pen.FIRST, new Spot(fx, start), ATTACHMENT);
        c.line(Pen.INK, fx, start, fx, taut);
        if (torn - taut > 1) {
            List<Spot> zigzag = new ArrayList<>();
            int n = Math.max(2, (int) Math.round((torn - taut) / ZIGZAG_STEP));
            for (int i = 0; i <= n; i++) {
                double side = i == 0 || i == n ? 0 : i % 2 == 0 ? ZIGZAG : -ZIGZAG;
                zigzag.add(new Spot(fx + side, taut + (torn - taut) * i / n));
            }
            c.polyline(Pen.INK, zigzag);
        }
        c.line(Pen.INK, fx, torn, fx, harness);
        figure(Pen.INK, fx, harness, feet);
    }

    /** From the attachment and the feet over to the clearance account; under all letters. */
    void leaders(double to) {
        double fx = elevation.px(elevation.along(arrest.span(), arrest.attachmentAtPeak())) + BESIDE_WORKER;
        double feet = elevation.pz(arrest.clearance().rows().get(5).elevation());
        double start = elevation.pz(arrest.attachmentAtPeak().z());
        c.line(Pen.GRID, fx, feet, to, feet);
        c.line(Pen.GRID, fx, start, to, start);
    }

    /** A worker from the harness attachment down to the feet [user units]. */
    private void figure(Pen pen, double fx, double harness, double feet) {
        double size = feet - harness;
        double head = Math.min(6, Math.max(3, size * 0.12));
        c.ring(pen, new Spot(fx, harness - head * 1.4), head);
        double hip = harness + 0.45 * size;
        c.line(pen, fx, harness, fx, hip);
        c.line(pen, fx, hip, fx - head, feet);
        c.line(pen, fx, hip, fx + head, feet);
        double hand = harness + 0.32 * size;
        c.line(pen, fx, harness + 2, fx - head * 1.5, hand);
        c.line(pen, fx, harness + 2, fx + head * 1.5, hand);
    }
}
