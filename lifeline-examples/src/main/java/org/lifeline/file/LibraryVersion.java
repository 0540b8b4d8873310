package org.lifeline.file;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;

/**
 * The version of the library, from the build; result files name it.
 *
 * @since 1.0.0
 */
public final class LibraryVersion {
    private static final String UNKNOWN = "unknown";

    private LibraryVersion() {}

    /**
     * The version.
     *
     * @return for example {@code "1.0.0"}; {@code "unknown"} where the classes were not built by the project's build
     */
    public static String text() {
        return property("version");
    }

    /**
     * The state of the source that the library was built from.
     *
     * @return the commit, with {@code -changed} behind it where files were changed since; {@code "unknown"} where the source
     *     that was built stands in no repository
     */
    public static String commit() {
        return property("commit");
    }

    private static String property(String name) {
        try (InputStream in = LibraryVersion.class.getResourceAsStream("build.properties")) {
            Properties p = new Properties();
            if (in != null) {
                p.load(in);
            }
            String version = p.getProperty(name, "");
            return version.isEmpty() || version.contains("$") ? UNKNOWN : version;
        } catch (IOException e) {
            return UNKNOWN;
        }
    }
}
