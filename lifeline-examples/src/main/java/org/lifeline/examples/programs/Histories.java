package org.lifeline.examples.programs;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.lifeline.analysis.TransientArrest;
import org.lifeline.analysis.TransientResult;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.examples.json.DesignFile;
import org.lifeline.model.Fall;
import org.lifeline.model.LifelineDesign;
import org.lifeline.report.HistoryPicture;
import org.lifeline.report.InertText;
import org.lifeline.report.UnitChoice;

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
        DesignFile file = DesignArgument.read(args);
        LifelineDesign design = file.design();
        if (design.falls().isEmpty()) {
            throw new IllegalArgumentException("falls: none; the design must name the fall that is to be followed");
        }
        Fall fall = design.falls().get(0);
        TransientResult r =
                TransientArrest.withDefaults().withClearance(design.clearance()).solve(design.line(), fall);
        print(design.title() + ": " + fall.id(), r);
        Map<String, double[]> columns = columns(r.history());
        if (args.length > 1) {
            Files.writeString(Path.of(args[1]), csv(columns));
            System.out.println("written: " + args[1]);
        }
        if (args.length > 2) {
            Files.writeString(
                    Path.of(args[2]), HistoryPicture.draw(r, UnitChoice.SI).svg());
            System.out.println("drawn: " + args[2]);
        }
    }

    private static void print(String title, TransientResult r) {
        System.out.println(InertText.plain(title));
        for (WorkerPeaks w : r.firstCatch().workers()) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "%-12s force %5.2f kN at %.2f s, lowest %.2f m at %.2f s, extension %.2f m",
                    InertText.plain(w.id()),
                    w.force().value() / 1000,
                    w.force().time(),
                    w.lowest().value(),
                    w.lowest().time(),
                    w.extension()));
        }
        for (SupportPeaks s : r.firstCatch().supports()) {
            System.out.println(String.format(
                    Locale.ROOT,
                    "%-12s force %5.2f kN at %.2f s, tension %5.2f kN before and %5.2f kN behind",
                    InertText.plain(s.id()),
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

    /** Every history under its name, time first. */
    private static Map<String, double[]> columns(MotionHistory history) {
        Map<String, double[]> map = new LinkedHashMap<>();
        map.put("time [s]", history.times());
        for (WorkerHistory w : history.workers()) {
            map.put(w.id() + ": force [N]", w.force());
            map.put(w.id() + ": extension [m]", w.extension());
            map.put(w.id() + ": x [m]", w.x());
            map.put(w.id() + ": y [m]", w.y());
            map.put(w.id() + ": z [m]", w.z());
            map.put(w.id() + ": attachment x [m]", w.lineX());
            map.put(w.id() + ": attachment y [m]", w.lineY());
            map.put(w.id() + ": attachment z [m]", w.lineZ());
        }
        for (SupportHistory s : history.supports()) {
            map.put(s.id() + ": tension before [N]", s.tensionBefore());
            map.put(s.id() + ": tension behind [N]", s.tensionBehind());
            map.put(s.id() + ": force [N]", s.force());
            map.put(s.id() + ": cable passed toward the fall [m]", s.slip());
            map.put(s.id() + ": in-line absorber [m]", s.inlineExtension());
        }
        for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
            String name = part.name().toLowerCase(Locale.ROOT).replace('_', ' ');
            map.put("energy: " + name + " [J]", history.energies().of(part));
        }
        return map;
    }

    private static String csv(Map<String, double[]> columns) {
        StringBuilder out = new StringBuilder();
        List<double[]> values = new ArrayList<>(columns.values());
        String separator = "";
        for (String name : columns.keySet()) {
            out.append(separator).append(InertText.csv(name));
            separator = ",";
        }
        out.append('\n');
        for (int i = 0; i < values.get(0).length; i++) {
            for (int k = 0; k < values.size(); k++) {
                out.append(k == 0 ? "" : ",").append(values.get(k)[i]);
            }
            out.append('\n');
        }
        return out.toString();
    }
}
