import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import jdk.internal.org.objectweb.asm.ClassReader;
import jdk.internal.org.objectweb.asm.ClassVisitor;
import jdk.internal.org.objectweb.asm.ClassWriter;
import jdk.internal.org.objectweb.asm.FieldVisitor;
import jdk.internal.org.objectweb.asm.MethodVisitor;
import jdk.internal.org.objectweb.asm.Opcodes;

/**
 * Writes the public and protected members of the public classes below some folders of compiled classes into a jar, without their
 * code: what a later version is compared with. Needs JDK 17, whose own class reader it uses.
 */
public final class ApiSkeleton {
    private static final int SEEN = Opcodes.ACC_PUBLIC | Opcodes.ACC_PROTECTED;

    /** Arguments: the jar, the folder of classes, then the packages as folders, each alone or with "/*" for what is below it. */
    public static void main(String[] args) throws IOException {
        Path root = Path.of(args[1]);
        List<String> packages = List.of(args).subList(2, args.length);
        TreeMap<String, byte[]> classes = new TreeMap<>();
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file : files.filter(f -> f.toString().endsWith(".class")).toList()) {
                String name = root.relativize(file).toString().replace('\\', '/');
                String folder = name.substring(0, Math.max(0, name.lastIndexOf('/')));
                if (packages.stream().anyMatch(p -> p.endsWith("/*")
                        ? (folder + "/").startsWith(p.substring(0, p.length() - 1)) && !folder.contains("/internal")
                        : folder.equals(p))) {
                    skeleton(Files.readAllBytes(file), name, classes);
                }
            }
        }
        try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(Path.of(args[0])))) {
            for (var each : classes.entrySet()) {
                ZipEntry entry = new ZipEntry(each.getKey());
                entry.setTimeLocal(java.time.LocalDateTime.of(1980, 1, 1, 0, 0));
                out.putNextEntry(entry);
                out.write(each.getValue());
            }
        }
        System.out.println(args[0] + ": " + classes.size() + " classes");
    }

    private static void skeleton(byte[] bytes, String name, TreeMap<String, byte[]> classes) {
        ClassReader reader = new ClassReader(bytes);
        ClassWriter writer = new ClassWriter(0);
        boolean[] keep = {(reader.getAccess() & Opcodes.ACC_PUBLIC) != 0 || name.endsWith("package-info.class")};
        reader.accept(
                new ClassVisitor(Opcodes.ASM8, writer) {
                    @Override
                    public void visitInnerClass(String inner, String outer, String simple, int access) {
                        if (inner.equals(reader.getClassName())) {
                            keep[0] &= (access & SEEN) != 0;
                        }
                        super.visitInnerClass(inner, outer, simple, access);
                    }

                    /** That a type is sealed is left out: it takes nothing away from a caller that the members do not say. */
                    @Override
                    @Deprecated
                    public void visitPermittedSubclassExperimental(String permitted) {}

                    @Override
                    public FieldVisitor visitField(int access, String n, String type, String generic, Object value) {
                        return (access & SEEN) == 0 ? null : super.visitField(access, n, type, generic, value);
                    }

                    @Override
                    public MethodVisitor visitMethod(int access, String n, String type, String generic, String[] thrown) {
                        return (access & SEEN) == 0 || (access & Opcodes.ACC_SYNTHETIC) != 0
                                ? null
                                : super.visitMethod(access, n, type, generic, thrown);
                    }
                },
                ClassReader.SKIP_CODE | ClassReader.SKIP_DEBUG | ClassReader.SKIP_FRAMES);
        if (keep[0] && !name.endsWith("package-info.class")) {
            classes.put(name, writer.toByteArray());
        }
    }
}
