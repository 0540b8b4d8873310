package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.LineEquilibrium;
import org.lifeline.analysis.Method;
import org.lifeline.base.Convergence;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.TableBuilder;
import org.lifeline.verify.Check;
import org.lifeline.verify.CheckResult;
import org.lifeline.verify.VerificationReport;
import org.lifeline.verify.Verifier;

/**
 * The independent check of every arrest by energy balance: equilibrium, compatibility, energy and accounts by formulas that
 * the solver does not share.
 *
 * @since 1.0.0
 */
public final class IndependentCheckSection {
    private static final List<Check> FORCES =
            List.of(Check.LOAD_EQUILIBRIUM, Check.PIECE_EQUILIBRIUM, Check.SUPPORT_REACTION, Check.GLOBAL_EQUILIBRIUM);
    private static final List<Check> SHAPE = List.of(Check.STRETCH, Check.CONTINUITY, Check.LENGTH, Check.SLIP);
    private static final List<Check> ENERGY = List.of(
            Check.ENERGY_FALL,
            Check.ENERGY_CABLE,
            Check.ENERGY_HANGING,
            Check.ENERGY_ANCHORS,
            Check.ENERGY_ABSORBERS,
            Check.ENERGY_CONNECTION,
            Check.ENERGY_RESIDUAL);

    private final List<Optional<VerificationReport>> reports;

    private IndependentCheckSection(List<Optional<VerificationReport>> reports) {
        this.reports = reports;
    }

    /**
     * Checks arrests.
     *
     * @param arrests the arrests
     * @return what came out
     */
    public static IndependentCheckSection of(List<ArrestResult> arrests) {
        List<Optional<VerificationReport>> list = new ArrayList<>();
        for (ArrestResult r : arrests) {
            list.add(
                    r.method() == Method.ENERGY_BALANCE
                            ? Optional.of(Verifier.withDefaults().arrest(r))
                            : Optional.empty());
        }
        return ofReports(list);
    }

    /**
     * What a check of arrests gave that was made already.
     *
     * @param reports one for each arrest; empty for one that was not checked
     * @return what came out
     */
    public static IndependentCheckSection ofReports(List<Optional<VerificationReport>> reports) {
        return new IndependentCheckSection(List.copyOf(reports));
    }

    /**
     * The arrests that failed a check.
     *
     * @return their numbers, from 1
     */
    public List<Integer> failed() {
        return numbers(r -> !r.failures().isEmpty());
    }

    /**
     * The arrests in which something could not be checked: rounding leaves more open than a check may allow.
     *
     * @return their numbers, from 1
     */
    public List<Integer> notCheckable() {
        return numbers(r -> !r.notCheckable().isEmpty());
    }

    private List<Integer> numbers(Predicate<VerificationReport> which) {
        List<Integer> list = new ArrayList<>();
        for (int i = 0; i < reports.size(); i++) {
            if (reports.get(i).filter(which).isPresent()) {
                list.add(i + 1);
            }
        }
        return list;
    }

    /**
     * Writes the section, with how the iterations of the solver ended.
     *
     * @param everyKind true to list every kind of check
     * @param installed the line as installed
     * @param arrests the arrests that were checked, in their order
     * @return the section
     */
    public ReportSection section(boolean everyKind, LineEquilibrium installed, List<ArrestResult> arrests) {
        List<ReportBlock> blocks = new ArrayList<>();
        blocks.add(new ReportBlock.Paragraph(
                "Every arrest by energy balance was checked by a second program part that shares no"
                        + " formula with the solver: the shape of the cable by quadrature, forces by vectors, energies from the"
                        + " curves. Residuals are relative: forces to the largest load, lengths to the chord, energies to that of the"
                        + " fall."));
        if (reports.stream().noneMatch(Optional::isPresent)) {
            blocks.add(new ReportBlock.Paragraph(
                    "There is no arrest by energy balance. An arrest in time is in motion and no equilibrium; how well"
                            + " its energy account closes and how far it is from converged is stated with it."));
            return new ReportSection("Independent check", 1, blocks);
        }
        blocks.add(residuals(arrests));
        Convergence c = installed.convergence();
        blocks.add(new ReportBlock.Paragraph(
                "The last columns say how the solver's iterations ended: its residual is what the"
                        + " pieces of cable fail to fit between their supports, over the chord, and what tensions fail the passage rules,"
                        + " over themselves. The installed state took " + c.iterations()
                        + " Newton steps; its residual is "
                        + power(c.residual()) + ", at most " + power(c.tolerance()) + "."));
        if (everyKind) {
            blocks.add(kinds());
        }
        List<String> failures = new ArrayList<>();
        for (int i = 0; i < reports.size(); i++) {
            String arrest = "arrest " + (i + 1) + ": ";
            reports.get(i).ifPresent(v -> {
                v.failures()
                        .forEach(f -> failures.add("FAILED in " + arrest + f.where() + ": " + f.what() + ": "
                                + power(f.value()) + ", limit " + power(f.limit())));
                v.notCheckable()
                        .forEach(f -> failures.add("NOT CHECKABLE in " + arrest + f.where() + ": " + f.what()
                                + ": rounding leaves " + power(f.value()) + " open, at most "
                                + power(f.limit())));
            });
        }
        if (!failures.isEmpty()) {
            blocks.add(new ReportBlock.Items(failures));
        }
        return new ReportSection("Independent check", 1, blocks);
    }

    private ReportBlock residuals(List<ArrestResult> arrests) {
        TableBuilder t = new TableBuilder("Largest residuals of each arrest")
                .number("Arrest")
                .number("Checks")
                .number("Failed")
                .number("Forces out of balance")
                .number("Shape and length of the cable")
                .number("Energy")
                .number("Newton steps")
                .number("Last residual")
                .number("Bound");
        for (int i = 0; i < reports.size(); i++) {
            if (reports.get(i).isEmpty()) {
                continue;
            }
            VerificationReport v = reports.get(i).get();
            t.row(
                    Integer.toString(i + 1),
                    Integer.toString(v.results().size()),
                    Integer.toString(v.failures().size()),
                    power(most(v, FORCES)),
                    power(most(v, SHAPE)),
                    power(most(v, ENERGY)),
                    Integer.toString(arrests.get(i).convergence().iterations()),
                    power(arrests.get(i).convergence().residual()),
                    power(arrests.get(i).convergence().tolerance()));
        }
        return t.build();
    }

    private static double most(VerificationReport v, List<Check> kinds) {
        return v.worst().entrySet().stream()
                .filter(e -> kinds.contains(e.getKey()))
                .mapToDouble(e -> e.getValue().value())
                .max()
                .orElse(0);
    }

    private ReportBlock kinds() {
        Map<Check, CheckResult> worst = new EnumMap<>(Check.class);
        Map<Check, Integer> where = new EnumMap<>(Check.class);
        for (int i = 0; i < reports.size(); i++) {
            int number = i + 1;
            reports.get(i)
                    .ifPresent(v -> v.worst().forEach((kind, result) -> {
                        CheckResult known = worst.get(kind);
                        if (known == null || result.severity() > known.severity()) {
                            worst.put(kind, result);
                            where.put(kind, number);
                        }
                    }));
        }
        TableBuilder t = new TableBuilder("Every kind of check, with the result that comes closest to its limit")
                .text("What is checked")
                .number("Largest")
                .number("Limit")
                .text("Where");
        worst.forEach((kind, r) -> t.row(
                r.what(),
                power(r.value()),
                power(r.limit()) + (r.unit().equals("m") ? " m" : ""),
                "arrest " + where.get(kind) + ", " + r.where()));
        return t.build();
    }

    /** A number to two digits with its power of ten, its minus signs those of all other numbers of a report. */
    static String power(double value) {
        return value == 0 ? "0" : String.format(Locale.ROOT, "%.1e", value).replace('-', '−');
    }
}
