package org.lifeline.explorer.engine;

import java.util.List;
import org.teavm.extension.spi.substitution.SubstitutionPolicy;
import org.teavm.extension.spi.substitution.SubstitutionSink;

/**
 * Tells the compiler which classes stand in for those of the JDK and of the JSON library that a browser lacks. The core needs
 * none of them; they are what the reader and the writer of files use.
 */
public final class BrowserSubstitutions implements SubstitutionPolicy {
    private static final String STAND_INS = "org.lifeline.explorer.engine.stand";

    /** The policy, made by the compiler. */
    public BrowserSubstitutions() {}

    @Override
    public void contribute(SubstitutionSink sink) {
        replace(sink, "java.lang", List.of("StrictMath"));
        replace(sink, "java.util", List.of("HexFormat"));
        replace(sink, "java.security", List.of("MessageDigest"));
        replace(sink, "org.apache.commons.math3.exception.util", List.of("ExceptionContext"));
        replace(sink, "org.lifeline.file.json", List.of("JsonTree", "JsonTree$Parsed", "JsonNumber"));
        replace(sink, "com.fasterxml.jackson.core.io", List.of("NumberInput", "NumberOutput"));
        replace(sink, "com.fasterxml.jackson.databind.node", List.of("InternalNodeMapper"));
    }

    private static void replace(SubstitutionSink sink, String home, List<String> names) {
        for (String name : names) {
            String full = home + '.' + name;
            sink.selectClasses(full::equals).replacePackage(home, STAND_INS);
        }
    }
}
