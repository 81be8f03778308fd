package gable.threemf;

import gable.opc.XmlTag;
import gable.opc.XmlVisitor;

/** Is told of the elements of a model part in the order of the text. */
public interface ModelVisitor extends XmlVisitor {

  /** Takes no notice. */
  ModelVisitor NONE =
      new ModelVisitor() {
        @Override
        public void started(XmlTag tag) {}

        @Override
        public void list(MeshNumbers numbers) {}

        @Override
        public void ended() {}
      };

  /**
   * The innermost element is a vertex or triangle list in its plain form, which has been read into
   * numbers already; its children are not told of.
   */
  void list(MeshNumbers numbers);
}
