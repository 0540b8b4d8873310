package org.lifeline.analysis;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.lifeline.analysis.motion.EnergyHistory;
import org.lifeline.analysis.motion.MeshRun;
import org.lifeline.analysis.motion.MotionHistory;
import org.lifeline.analysis.motion.MotionPeaks;
import org.lifeline.analysis.motion.Peak;
import org.lifeline.analysis.motion.PeakAllowances;
import org.lifeline.analysis.motion.SupportHistory;
import org.lifeline.analysis.motion.SupportPeaks;
import org.lifeline.analysis.motion.WorkerHistory;
import org.lifeline.analysis.motion.WorkerPeaks;
import org.lifeline.base.Point;
import org.lifeline.internal.motion.MeshRefinement;
import org.lifeline.internal.motion.PeakValues;
import org.lifeline.internal.motion.TimeHistory;
import org.lifeline.internal.numeric.OrderedWork;
import org.lifeline.model.Fall;
import org.lifeline.model.Lifeline;
import org.lifeline.model.Support;

/** Histories, peaks, meshes and allowances of a motion in the words of the result. Immutable; used within one call. */
final class MotionRecords {
    private final Lifeline line;
    private final Fall fall;
    private final List<TransientCase.Person> people;

    MotionRecords(Lifeline line, Fall fall, List<TransientCase.Person> people) {
        this.line = line;
        this.fall = fall;
        this.people = people;
    }

    static List<MeshRun> meshes(MeshRefinement refined) {
        List<MeshRun> list = new ArrayList<>();
        for (MeshRefinement.Level each : refined.levels()) {
            MeshRun.Peaks peaks = new MeshRun.Peaks(
                    refined.arrestForce(each.peaks()), each.peaks().tension, refined.lowest(each.peaks()));
            double spread = list.isEmpty()
                    ? Double.NaN
                    : spread(list.get(list.size() - 1).peaks(), peaks, refined.fallDistance());
            list.add(new MeshRun(new MeshRun.Mesh(each.segment(), each.nodes()), each.steps(), peaks, spread));
        }
        return list;
    }

    private static double spread(MeshRun.Peaks old, MeshRun.Peaks peaks, double fallDistance) {
        double forces =
                Math.max(change(old.arrestForce(), peaks.arrestForce()), change(old.tension(), peaks.tension()));
        return Math.max(forces, Math.abs(old.lowest() - peaks.lowest()) / fallDistance);
    }

    private static double change(double from, double to) {
        return to == from ? 0 : Math.abs(from - to) / Math.abs(to);
    }

    PeakAllowances allowances(MeshRefinement refined) {
        Map<String, PeakAllowances.Force> supports = new LinkedHashMap<>();
        for (int i = 0; i < line.supports().size(); i++) {
            supports.put(
                    line.supports().get(i).id(),
                    new PeakAllowances.Force(
                            refined.supportBound(i), refined.filteredBound(MeshRefinement.Force.onSupport(i))));
        }
        MeshRefinement.Force tension = MeshRefinement.Force.tension();
        MeshRefinement.Force arrest = new MeshRefinement.Force(refined::arrestForce, refined::filteredArrestForce);
        return new PeakAllowances(
                new PeakAllowances.Force(refined.bound(tension), refined.filteredBound(tension)),
                new PeakAllowances.Force(refined.arrestForceBound(), refined.filteredBound(arrest)),
                supports,
                new PeakAllowances.Bounds(
                        refined.lowestBound(),
                        new PeakAllowances.Extensions(refined.extensionBound(), refined.inlineBound()),
                        refined.uncertainty()));
    }

    MotionHistory history(TimeHistory record) {
        List<WorkerHistory> workers = new ArrayList<>();
        for (int k = 0; k < people.size(); k++) {
            Map<WorkerHistory.Quantity, double[]> values = new EnumMap<>(WorkerHistory.Quantity.class);
            int number = 0;
            for (WorkerHistory.Quantity each : WorkerHistory.Quantity.values()) {
                values.put(each, record.body(k, number++));
            }
            workers.add(new WorkerHistory(people.get(k).worker().id(), values));
        }
        List<SupportHistory> supports = new ArrayList<>();
        for (int i = 0; i < line.supports().size(); i++) {
            OrderedWork.stopIfInterrupted();
            supports.add(new SupportHistory(line.supports().get(i).id(), support(record, i)));
        }
        Map<EnergyHistory.Part, double[]> energies = new EnumMap<>(EnergyHistory.Part.class);
        int energy = 0;
        for (EnergyHistory.Part part : EnergyHistory.Part.values()) {
            energies.put(part, record.energy(energy++));
        }
        return new MotionHistory(record.times(), workers, supports, new EnergyHistory(energies));
    }

    private Map<SupportHistory.Quantity, double[]> support(TimeHistory record, int i) {
        Map<SupportHistory.Quantity, double[]> values = new EnumMap<>(SupportHistory.Quantity.class);
        int number = 0;
        for (SupportHistory.Quantity each : SupportHistory.Quantity.values()) {
            if (each != SupportHistory.Quantity.INLINE_EXTENSION) {
                values.put(each, record.support(i, number++));
            }
        }
        if (i >= line.spanOf(fall.place())) {
            double[] slip = values.getOrDefault(SupportHistory.Quantity.SLIP, new double[0]);
            for (int k = 0; k < slip.length; k++) {
                slip[k] = 0.0 - slip[k];
            }
        }
        int last = line.supports().size() - 1;
        values.put(
                SupportHistory.Quantity.INLINE_EXTENSION,
                i == 0 ? record.inline(0) : i == last ? record.inline(1) : new double[record.samples()]);
        return values;
    }

    MotionPeaks peaks(PeakValues log) {
        List<WorkerPeaks> workers = new ArrayList<>();
        for (int k = 0; k < people.size(); k++) {
            workers.add(new WorkerPeaks(
                    people.get(k).worker().id(),
                    new Peak(log.force[k], log.forceTime[k]),
                    log.filteredForce[k],
                    new Peak(log.lowest[k], log.lowestTime[k]),
                    Math.max(0, log.extension[k])));
        }
        List<SupportPeaks> supports = new ArrayList<>();
        List<Support> given = line.supports();
        for (int i = 0; i < given.size(); i++) {
            supports.add(new SupportPeaks(
                    given.get(i).id(),
                    new Peak(log.support[i], log.supportTime[i]),
                    log.filteredSupport[i],
                    log.supportTension[2 * i],
                    log.supportTension[2 * i + 1]));
        }
        Point place = Point.of(log.tensionPlace[0], log.tensionPlace[1], log.tensionPlace[2]);
        return new MotionPeaks(new Peak(log.tension, log.tensionTime), log.filteredTension, place, workers, supports);
    }
}
