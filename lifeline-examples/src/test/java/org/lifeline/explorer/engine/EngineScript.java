package org.lifeline.explorer.engine;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.graalvm.polyglot.Context;
import org.graalvm.polyglot.Source;
import org.graalvm.polyglot.Value;
import org.lifeline.explorer.ExplorerPage;

/** The compiled script, run by a JavaScript engine on the JVM. */
final class EngineScript implements AutoCloseable {
    private final Context context;
    private final Value exports;

    EngineScript() throws IOException {
        context = Context.newBuilder("js")
                .option("engine.WarnInterpreterOnly", "false")
                .build();
        context.eval("js", "var exports = {};");
        context.eval(Source.newBuilder("js", text(), "engine.js").build());
        exports = context.eval("js", "exports");
    }

    /** The script; the build makes it before the tests run. */
    static String text() throws IOException {
        try (InputStream in = EngineScript.class.getResourceAsStream(ExplorerPage.ENGINE)) {
            if (in == null) {
                throw new IllegalStateException("the library is not compiled for a browser; run mvn -q -pl"
                        + " lifeline-examples -am -DskipTests package");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** The answer of a function of {@link Engine}. */
    String call(String function, Object... arguments) {
        return exports.getMember(function).execute(arguments).asString();
    }

    @Override
    public void close() {
        context.close();
    }
}
