package org.lifeline.examples.print;

import java.util.ArrayList;
import java.util.List;
import org.lifeline.base.InertText;
import org.lifeline.file.DesignFile;
import org.lifeline.model.Lifeline;
import org.lifeline.model.LifelineDesign;
import org.lifeline.model.Passage;
import org.lifeline.model.Support;
import org.lifeline.model.Worker;
import org.lifeline.model.cable.Cable;
import org.lifeline.report.document.Quantities;
import org.lifeline.report.document.QuantityKind;

/** What a design file leaves out and the program took instead, each as a sentence. */
final class NotStated {
    private final DesignFile file;
    private final Quantities q;
    private final List<String> list = new ArrayList<>();

    private NotStated(DesignFile file, Quantities q) {
        this.file = file;
        this.q = q;
    }

    static List<String> of(DesignFile file, LifelineDesign design, Quantities q) {
        NotStated n = new NotStated(file, q);
        n.line(design);
        n.workers(design);
        return n.list;
    }

    private void line(LifelineDesign design) {
        Lifeline line = design.line();
        missing(
                "installed.temperature",
                "temperature of installation "
                        + q.input(QuantityKind.TEMPERATURE, line.installed().temperature()));
        if (file.written("service.temperatures[0]").isEmpty()) {
            list.add("Not stated, taken: the temperature of installation in service.");
        }
        missing(
                "cable.thermalExpansion",
                "thermal expansion of the cable "
                        + q.input(QuantityKind.EXPANSION, line.cable().thermalExpansion())
                        + " (recalled value for steel rope)");
        missing(
                "cable.terminationEfficiency",
                "termination efficiency " + Cable.LOWEST_TERMINATION_EFFICIENCY
                        + " (lowest of the terminations of EN 13411, recalled)");
        missing(
                "clearance.harnessStretch",
                "harness stretch "
                        + q.input(QuantityKind.LENGTH, design.clearance().harnessStretch())
                        + " (common practice, no source)");
        missing(
                "clearance.margin",
                "margin below the feet "
                        + q.input(QuantityKind.LENGTH, design.clearance().margin()) + " (common practice, no source)");
        for (int i = 0; i < line.supports().size(); i++) {
            Support s = line.supports().get(i);
            boolean stated = file.written("supports[" + i + "].passage").isPresent()
                    || file.written("supports[" + i + "].passage.friction").isPresent();
            if (!s.isEnd() && !stated && s.passage().kind() == Passage.Kind.FREE) {
                list.add("Not stated, taken: the cable passes " + InertText.name(s.id()) + " freely.");
            }
        }
    }

    private void workers(LifelineDesign design) {
        for (int i = 0; i < design.workers().size(); i++) {
            Worker w = design.workers().get(i);
            String at = "workers[" + i + "].";
            missing(
                    at + "attachmentHeight",
                    "harness attachment of " + InertText.name(w.id()) + " "
                            + q.input(QuantityKind.LENGTH, w.attachmentHeight())
                            + " above the feet (common practice, no source)");
            missing(at + "attachment", "free-running attachment of " + InertText.name(w.id()));
        }
    }

    private void missing(String path, String taken) {
        if (file.written(path).isEmpty()) {
            list.add("Not stated, taken: " + taken + ".");
        }
    }
}
