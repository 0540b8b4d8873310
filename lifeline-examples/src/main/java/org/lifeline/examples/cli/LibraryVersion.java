package org.lifeline.examples.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;

/** The version of the library, from the build. */
final class LibraryVersion {
    private LibraryVersion() {}

    static String text() {
        return property("version");
    }

    /** The state of the source that the program was built from. */
    static String commit() {
        return property("commit");
    }

    private static String property(String name) {
        try (InputStream in = LibraryVersion.class.getResourceAsStream("/org/lifeline/examples/build.properties")) {
            Properties p = new Properties();
            if (in != null) {
                p.load(in);
            }
            String version = p.getProperty(name, "");
            return version.isEmpty() || version.contains("$") ? "unknown" : version;
        } catch (IOException e) {
            return "unknown";
        }
    }
}
