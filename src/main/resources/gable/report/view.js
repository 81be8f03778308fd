'use strict';
(async () => {
  const find = (id) => document.getElementById(id);
  const canvas = find('view');
  const data = JSON.parse(find('scene').textContent);
  const textOf = (id) => find(id).textContent;
  const asModule = (text) => URL.createObjectURL(new Blob([text], { type: 'text/javascript' }));
  const core = asModule(textOf('three-core'));
  const whole = textOf('three-module').replaceAll('./three.core.min.js', core);
  let three;
  let renderer;
  try {
    three = await import(asModule(whole));
    renderer = new three.WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
  } catch (failure) {
    find('view-box').hidden = true;
    find('view-none').hidden = false;
    return;
  }

  const bytes = (text) => Uint8Array.from(atob(text), (c) => c.charCodeAt(0)).buffer;
  const scene = new three.Scene();
  scene.add(new three.HemisphereLight(0xffffff, 0x8a8f94, 2.2));
  const lamp = new three.DirectionalLight(0xffffff, 1.6);
  scene.add(lamp);
  const material = (color, more) => new three.MeshLambertMaterial(
    { color, flatShading: true, side: three.DoubleSide, ...more });
  const plain = material(0xa9b6be);
  const marked = material(0xe08214);
  const ghost = material(0x0b5394, { transparent: true, opacity: 0.45, depthWrite: false });
  const parts = { both: [], before: [], after: [], ghost: [] };
  const box = new three.Box3();

  for (const object of data.objects) {
    const raw = new Uint16Array(bytes(object.points));
    const points = new Float32Array(raw.length);
    for (let i = 0; i < raw.length; i += 1) {
      const k = i % 3;
      points[i] = object.low[k] + (raw[i] / 65535) * (object.high[k] - object.low[k]);
    }
    const position = new three.BufferAttribute(points, 3);
    const surface = (group) => {
      const geometry = new three.BufferGeometry();
      geometry.setAttribute('position', position);
      geometry.setIndex(new three.BufferAttribute(new Uint32Array(bytes(object.groups[group])), 1));
      return geometry;
    };
    const surfaces = [0, 1, 2, 3, 4].map(surface);
    for (const place of object.places) {
      const put = (group, paint, into) => {
        const mesh = new three.Mesh(surfaces[group], paint);
        mesh.matrixAutoUpdate = false;
        mesh.matrix.fromArray(place);
        into.push(mesh);
        scene.add(mesh);
      };
      put(0, plain, parts.both);
      put(1, plain, parts.before);
      put(2, plain, parts.before);
      put(3, plain, parts.after);
      put(4, marked, parts.after);
      put(1, ghost, parts.ghost);
      const corners = new three.Box3(new three.Vector3(...object.low), new three.Vector3(...object.high));
      box.union(corners.applyMatrix4(new three.Matrix4().fromArray(place)));
    }
  }

  const camera = new three.OrthographicCamera(-1, 1, 1, -1, -1, 1);
  camera.up.set(0, 0, 1);
  const size = box.isEmpty() ? 1 : box.getSize(new three.Vector3()).length();
  const view = { target: new three.Vector3(), turn: -0.9, rise: 0.4, half: size * 0.55 };
  if (!box.isEmpty()) box.getCenter(view.target);

  let asked = false;
  const draw = () => {
    asked = false;
    const width = canvas.clientWidth;
    const height = canvas.clientHeight;
    renderer.setPixelRatio(window.devicePixelRatio);
    renderer.setSize(width, height, false);
    const dark = window.matchMedia('(prefers-color-scheme: dark)').matches;
    renderer.setClearColor(dark ? 0x1e2226 : 0xf4f3ef);
    const towards = new three.Vector3(
      Math.cos(view.rise) * Math.cos(view.turn), Math.cos(view.rise) * Math.sin(view.turn), Math.sin(view.rise));
    camera.position.copy(view.target).addScaledVector(towards, size * 2);
    camera.lookAt(view.target);
    camera.left = -view.half * (width / height);
    camera.right = -camera.left;
    camera.top = view.half;
    camera.bottom = -view.half;
    camera.near = 0;
    camera.far = size * 4;
    camera.updateProjectionMatrix();
    lamp.position.copy(camera.position).add(new three.Vector3(0, 0, size * 0.6));
    lamp.target.position.copy(view.target);
    lamp.target.updateMatrixWorld();
    renderer.render(scene, camera);
  };
  const ask = () => {
    if (!asked) {
      asked = true;
      requestAnimationFrame(draw);
    }
  };

  const shown = () => document.querySelector('input[name="state"]:checked').value;
  const choose = () => {
    const state = shown();
    parts.before.forEach((mesh) => { mesh.visible = state === 'before'; });
    parts.after.forEach((mesh) => { mesh.visible = state !== 'before'; });
    parts.ghost.forEach((mesh) => { mesh.visible = state === 'both'; });
    ask();
  };
  document.querySelectorAll('input[name="state"]').forEach((each) => each.addEventListener('change', choose));

  const jump = find('jump');
  for (const feature of data.features) {
    const option = document.createElement('option');
    option.textContent = feature.id;
    jump.append(option);
  }
  jump.addEventListener('change', () => {
    const feature = data.features[jump.selectedIndex - 1];
    if (feature) {
      view.target.set(...feature.at);
      view.turn = Math.atan2(-feature.axis[1], -feature.axis[0]) + 0.35;
      view.rise = Math.abs(feature.axis[2]) > 0.9 ? 0.9 : 0.12;
      view.half = feature.radius * 3.5;
    } else {
      if (!box.isEmpty()) box.getCenter(view.target);
      view.half = size * 0.55;
    }
    ask();
  });

  const turn = (by, up) => {
    view.turn -= by;
    view.rise = Math.max(-1.5, Math.min(1.5, view.rise + up));
    ask();
  };
  const zoom = (by) => {
    view.half = Math.max(size * 0.002, Math.min(size * 3, view.half * by));
    ask();
  };
  canvas.addEventListener('pointerdown', (event) => canvas.setPointerCapture(event.pointerId));
  canvas.addEventListener('pointermove', (event) => {
    if (event.buttons) turn(event.movementX * 0.01, event.movementY * 0.01);
  });
  canvas.addEventListener('wheel', (event) => {
    event.preventDefault();
    zoom(Math.exp(event.deltaY * 0.001));
  }, { passive: false });
  const keys = {
    ArrowLeft: () => turn(-0.1, 0), ArrowRight: () => turn(0.1, 0),
    ArrowUp: () => turn(0, 0.1), ArrowDown: () => turn(0, -0.1),
    '+': () => zoom(0.85), '=': () => zoom(0.85), '-': () => zoom(1 / 0.85),
  };
  canvas.addEventListener('keydown', (event) => {
    if (keys[event.key]) {
      event.preventDefault();
      keys[event.key]();
    }
  });
  new ResizeObserver(ask).observe(canvas);
  choose();
  draw();
  document.documentElement.dataset.view = 'ready';
})();
