package gable.plugin;

import java.util.Set;

/**
 * Shows plug-ins the part of this program that they may use, and the Java platform; nothing else.
 * So libraries that a plug-in brings along never meet those of this program.
 */
final class Published extends ClassLoader {

  private static final Set<String> PACKAGES =
      Set.of("gable.geom", "gable.mesh", "gable.section", "gable.feature", "gable.plan");

  private final ClassLoader program;

  Published(ClassLoader program) {
    super("gable", ClassLoader.getPlatformClassLoader());
    this.program = program;
  }

  /** Called when the platform does not have the class. */
  @Override
  protected Class<?> findClass(String name) throws ClassNotFoundException {
    int end = name.lastIndexOf('.');
    if (end > 0 && PACKAGES.contains(name.substring(0, end))) {
      return program.loadClass(name);
    }
    throw new ClassNotFoundException(name);
  }
}
