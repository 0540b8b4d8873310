package org.lifeline.report.section;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lifeline.analysis.ArrestResult;
import org.lifeline.analysis.clearance.ClearanceRow;
import org.lifeline.analysis.state.EnergyAccount;
import org.lifeline.base.InertText;
import org.lifeline.base.UnitSystem;
import org.lifeline.report.document.CaseNames;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;
import org.lifeline.report.document.ReportBlock;
import org.lifeline.report.document.ReportSection;
import org.lifeline.report.document.RoundedAccount;
import org.lifeline.report.document.TableBuilder;

/**
 * All arrests side by side: results, energy accounts, clearance accounts, loads on the supports.
 *
 * @since 1.0.0
 */
public final class ArrestTables {
    /** Why the energies of some arrests are more than what the fall set free. */
    static final String BOUND =
            "Those who fall together are not alike, so that forces and distances are bounds on the safe side:"
                    + " each is credited only with the work on the line that the others leave. The parts are more than the fall set"
                    + " free, and what is not accounted for is that excess.";

    private final List<ArrestResult> arrests;
    private final Quantities q;
    private final UnitSystem system;

    /**
     * A section in the units of a report; accounts are in the leading system.
     *
     * @param arrests the arrests
     * @param q the units
     */
    public ArrestTables(List<ArrestResult> arrests, Quantities q) {
        this.arrests = arrests;
        this.q = q;
        this.system = q.choice().leading();
    }

    /**
     * Writes the section.
     *
     * @return the section
     */
    public ReportSection section() {
        List<ReportBlock> blocks = new ArrayList<>();
        if (arrests.isEmpty()) {
            blocks.add(new ReportBlock.Paragraph("No fall was analysed."));
        } else {
            blocks.add(results());
            blocks.add(energies());
            bounds().ifPresent(blocks::add);
            clearances(blocks);
            blocks.add(loads());
        }
        return new ReportSection("Arrests in tables", 1, blocks);
    }

    private ReportBlock results() {
        TableBuilder t = new TableBuilder("All arrests, as computed")
                .number("Arrest")
                .text("Fall")
                .text("Force")
                .number("Temperature")
                .number("Free fall")
                .number("Deployment")
                .number("Arrest force")
                .number("End anchor load")
                .number("Sag at the load")
                .number("Clearance margin");
        for (int i = 0; i < arrests.size(); i++) {
            ArrestResult r = arrests.get(i);
            t.row(
                    Integer.toString(i + 1),
                    InertText.name(r.fall().id()),
                    CaseNames.shortSide(r.side()) + CaseNames.conditions(r.fall(), r.side(), r.temperature()),
                    q.input(QuantityKind.TEMPERATURE, r.temperature()),
                    q.result(QuantityKind.LENGTH, r.freeFall()),
                    q.result(QuantityKind.LENGTH, r.deployment()),
                    q.result(QuantityKind.FORCE, r.arrestForce()),
                    q.result(QuantityKind.FORCE, r.endAnchorLoad()),
                    q.result(QuantityKind.LENGTH, r.sag()),
                    r.clearance().margin().isPresent()
                            ? q.result(
                                    QuantityKind.LENGTH, r.clearance().margin().getAsDouble())
                            : "–");
        }
        return t.build();
    }

    /** Which accounts do not close, and why. */
    private Optional<ReportBlock> bounds() {
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < arrests.size(); i++) {
            if (arrests.get(i).isBound()) {
                numbers.add(i + 1);
            }
        }
        return numbers.isEmpty()
                ? Optional.empty()
                : Optional.of(new ReportBlock.Paragraph(CaseNames.capital(CaseNames.list(numbers)) + ": " + BOUND));
    }

    private ReportBlock energies() {
        String unit = " [" + QuantityKind.ENERGY.unit(system) + "]";
        TableBuilder t = new TableBuilder("Energy accounts" + unit + ": the parts add up to what the fall set free")
                .number("Arrest")
                .number("Cable")
                .number("Hanging workers")
                .number("Friction")
                .number("In-line absorbers")
                .number("Elastic supports")
                .number("Connecting subsystem")
                .number("Not accounted for")
                .number("Set free by the fall");
        for (int i = 0; i < arrests.size(); i++) {
            EnergyAccount e = arrests.get(i).energy();
            RoundedAccount sum = RoundedAccount.sum(
                    List.of(
                            e.cable(),
                            e.hanging(),
                            e.friction(),
                            e.inlineAbsorbers(),
                            e.anchors(),
                            e.connection(),
                            e.residual()),
                    QuantityKind.ENERGY,
                    system);
            List<String> cells = new ArrayList<>(List.of(Integer.toString(i + 1)));
            sum.rows().forEach(v -> cells.add(QuantityKind.show(v)));
            cells.add(QuantityKind.show(sum.totals().get(0)));
            t.row(cells);
        }
        return t.build();
    }

    /** One table for all arrests whose accounts have the same steps. */
    private void clearances(List<ReportBlock> blocks) {
        Map<List<String>, List<Integer>> alike = new LinkedHashMap<>();
        for (int i = 0; i < arrests.size(); i++) {
            List<String> items = arrests.get(i).clearance().rows().stream()
                    .map(ClearanceRow::item)
                    .toList();
            alike.computeIfAbsent(items, k -> new ArrayList<>()).add(i);
        }
        alike.forEach((items, numbers) -> blocks.add(clearance(items, numbers)));
    }

    private ReportBlock clearance(List<String> items, List<Integer> numbers) {
        String unit = " [" + QuantityKind.LENGTH.unit(system) + "]";
        TableBuilder t = new TableBuilder("Clearance accounts" + unit
                        + ": the elevation of the line less the steps is the elevation that is required to be free")
                .number("Arrest")
                .number(CaseNames.capital(items.get(0)));
        items.subList(1, items.size()).forEach(item -> t.number(CaseNames.capital(item)));
        t.number("Required elevation");
        for (int i : numbers) {
            List<Double> steps = new ArrayList<>();
            List<ClearanceRow> rows = arrests.get(i).clearance().rows();
            rows.subList(1, rows.size()).forEach(r -> steps.add(r.value()));
            RoundedAccount account =
                    RoundedAccount.down(arrests.get(i).clearance().lineElevation(), steps, QuantityKind.LENGTH, system);
            List<String> cells = new ArrayList<>(List.of(Integer.toString(i + 1)));
            cells.add(QuantityKind.show(account.totals().get(0)));
            account.rows().forEach(v -> cells.add(QuantityKind.show(v)));
            cells.add(QuantityKind.show(account.totals().get(account.totals().size() - 1)));
            t.row(cells);
        }
        return t.build();
    }

    private ReportBlock loads() {
        TableBuilder t =
                new TableBuilder("Force of the line on each support, and tension of the cable").number("Arrest");
        arrests.get(0).supports().forEach(s -> t.number(InertText.name(s.id())));
        t.number("Largest tension");
        for (int i = 0; i < arrests.size(); i++) {
            List<String> cells = new ArrayList<>(List.of(Integer.toString(i + 1)));
            arrests.get(i).supports().forEach(s -> cells.add(q.result(QuantityKind.FORCE, s.force())));
            cells.add(q.result(QuantityKind.FORCE, arrests.get(i).maximumTension()));
            t.row(cells);
        }
        return t.build();
    }
}
