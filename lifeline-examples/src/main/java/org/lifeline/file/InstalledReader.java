package org.lifeline.file;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.lifeline.base.unit.Dimension;
import org.lifeline.file.Fields.Range;
import org.lifeline.model.Installed;

/** Reads {@code installed}. */
final class InstalledReader {
    private static final String[] FORMS = {"pretension", "horizontalTension", "initialSag", "unstretchedLength"};

    private InstalledReader() {}

    static @Nullable Installed read(Fields f) {
        double pretension = f.quantity("pretension", Dimension.FORCE, Range.POSITIVE);
        double horizontal = f.quantity("horizontalTension", Dimension.FORCE, Range.POSITIVE);
        double sag = f.quantity("initialSag", Dimension.LENGTH, Range.POSITIVE);
        double length = f.quantity("unstretchedLength", Dimension.LENGTH, Range.POSITIVE);
        int span = f.count("span");
        double temperature = f.quantity("temperature", Dimension.TEMPERATURE, Range.ANY);
        String from = f.choice("tensionedFrom", List.of("first", "last"));
        int forms = f.count(FORMS);
        if (forms != 1) {
            f.findings()
                    .say(
                            f.path(),
                            forms == 0 ? "missing" : "given more than once",
                            "give exactly one of " + String.join(", ", FORMS));
        }
        if (f.has("initialSag") && !f.has("span")) {
            f.findings().missing(f.path("span"), "must be given together with initialSag");
        }
        if (f.has("span") && !f.has("initialSag") && !f.has("horizontalTension")) {
            f.findings().bad(f.path("span"), f.node("span"), "stands only beside initialSag or horizontalTension");
        }
        f.close();
        return f.build(() -> {
            Installed installed = f.has("pretension")
                    ? Installed.pretension(pretension)
                    : f.has("horizontalTension")
                            ? Installed.horizontalTension(horizontal).inSpan(Math.max(1, span))
                            : f.has("initialSag")
                                    ? Installed.initialSag(span, sag)
                                    : Installed.unstretchedLength(length);
            if (from != null) {
                installed = installed.tensionedFrom(
                        from.equals("first") ? Installed.TensioningEnd.FIRST : Installed.TensioningEnd.LAST);
            }
            return Double.isNaN(temperature) ? installed : installed.atTemperature(temperature);
        });
    }
}
