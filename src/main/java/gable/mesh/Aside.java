package gable.mesh;

import java.util.function.Supplier;

/** Has work done on the side, if there is somebody to do it. */
public interface Aside {

  /** Nobody: work is done when its result is asked for. */
  Aside NOBODY =
      new Aside() {
        @Override
        public boolean helps() {
          return false;
        }

        @Override
        public <T> Supplier<T> start(Supplier<T> work) {
          return work;
        }
      };

  /** Whether work that may turn out to be in vain is worth starting. */
  boolean helps();

  /**
   * Starts work that reads only what nobody changes meanwhile, or knows how to tell.
   *
   * @return waits for the result; throws what the work has thrown
   */
  <T> Supplier<T> start(Supplier<T> work);
}
