package org.lifeline.examples.programs;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.InertText;
import org.lifeline.examples.shared.DesignArgument;
import org.lifeline.examples.shared.FileArguments;
import org.lifeline.file.DesignFile;
import org.lifeline.file.output.FileKind;
import org.lifeline.file.output.Output;
import org.lifeline.file.output.OutputSet;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.chart.HistoryPicture;
import org.lifeline.report.document.UnitChoice;

/** The first fall of a design followed for three seconds: peaks, and the histories as a table of numbers and a picture. */
public final class Histories {
    private Histories() {}

    /**
     * Prints the peaks, and writes the histories.
     *
     * @param args nothing; or a design file; or a design file and the file that the histories go to, such as
     *     {@code histories.csv}; or both and the file that the picture goes to, such as {@code histories.svg}
     * @throws IOException if a file cannot be read or written
     */
    public static void main(String[] args) throws IOException {
        FileArguments given = FileArguments.of(args);
        try (OutputSet outputs = given.outputsOfDesign()) {
            run(outputs, given.plain());
        }
    }

    private static void run(OutputSet outputs, String[] args) throws IOException {
        DesignFile file = DesignArgument.read(args);
        Output table = args.length > 1 ? outputs.claim(args[1], FileKind.HISTORIES) : null;
        Output picture = args.length > 2 ? outputs.claim(args[2], FileKind.PICTURE) : null;
        LifelineDesign design = file.design();
        if (design.falls().isEmpty()) {
            throw new IllegalArgumentException("falls: none; the design must name the fall that is to be followed");
        }
        Fall fall = design.falls().get(0);
        TransientResult r =
                TransientArrest.withDefaults().withClearance(design.clearance()).solve(design.line(), fall);
        print(InertText.name(design.title()) + ": " + InertText.name(fall.id()), r);
        if (table != null) {
            table.put(new Table(r.history()).csv());
        }
        if (picture != null) {
            picture.put(HistoryPicture.draw(r, UnitChoice.SI).svg());
        }
        outputs.commit();
        if (table != null) {
            System.out.println("written: " + InertText.plain(args[1]));
        }
        if (picture != null) {
            System.out.println("drawn: " + InertText.plain(args[2]));
        }
    }

    private static void print(String title, TransientResult r) {
        System.out.println(title);
        for (WorkerPeaks w : r.firstCatch().workers()) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "%-12s force %5.2f kN at %.2f s, lowest %.2f m at %.2f s, extension %.2f m",
                    InertText.name(w.id()),
                    w.force().value() / 1000,
                    w.force().time(),
                    w.lowest().value(),
                    w.lowest().time(),
                    w.extension()));
        }
        for (SupportPeaks s : r.firstCatch().supports()) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "%-12s force %5.2f kN at %.2f s, tension before %5.2f kN, behind %5.2f kN",
                    InertText.name(s.id()),
                    s.force().value() / 1000,
                    s.force().time(),
                    s.tensionBefore() / 1000,
                    s.tensionBehind() / 1000));
        }
        r.tensionRatio()
                .ifPresent(q -> System.out.println(
                        String.format(Locale.ROOT, "largest tension %.2f times that of the energy balance", q)));
        MeshRun mesh = r.meshes().get(r.meshes().size() - 1);
        System.out.println(String.format(
                Locale.ROOT,
                "segments of %.0f mm, peaks to %.1f %%; energy account closes to %.3f %%",
                1000 * mesh.mesh().segmentLength(),
                100 * r.spread(),
                100 * r.relativeDrift()));
    }

    /** Every history under its heading, time first. A worker and a support may have the same name. */
    private static final class Table {
        private final List<String> names = new ArrayList<>();
        private final List<double[]> columns = new ArrayList<>();

        Table(MotionHistory history) {
            add("time [s]", history.times());
            for (WorkerHistory w : history.workers()) {
                String name = "worker " + InertText.name(w.id());
                add(name + ": force [N]", w.force());
                add(name + ": extension [m]", w.extension());
                add(name + ": x [m]", w.x());
                add(name + ": y [m]", w.y());
                add(name + ": z [m]", w.z());
                add(name + ": attachment x [m]", w.lineX());
                add(name + ": attachment y [m]", w.lineY());
                add(name + ": attachment z [m]", w.lineZ());
            }
            for (SupportHistory s : history.supports()) {
                String name = "support " + InertText.name(s.id());
                add(name + ": tension before [N]", s.tensionBefore());
                add(name + ": tension behind [N]", s.tensionBehind());
                add(name + ": force [N]", s.force());
                add(name + ": cable passed toward the fall [m]", s.slip());
                add(name + ": in-line absorber [m]", s.inlineExtension());
            }
            for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
                String name = part.name().toLowerCase(Locale.ROOT).replace('_', ' ');
                add("energy: " + name + " [J]", history.energies().of(part));
            }
        }

        private void add(String name, double[] column) {
            names.add(InertText.csv(name));
            columns.add(column);
        }

        String csv() {
            StringBuilder out = new StringBuilder(String.join(",", names)).append('\n');
            for (int i = 0; i < columns.get(0).length; i++) {
                String separator = "";
                for (double[] each : columns) {
                    out.append(separator).append(InertText.csvNumber(each[i]));
                    separator = ",";
                }
                out.append('\n');
            }
            return out.toString();
        }
    }
}
