'use strict';
(() => {
  const PAGE = 50;
  const data = JSON.parse(document.getElementById('data').textContent);
  const models = data.models;
  const find = (id) => document.getElementById(id);
  const words = find('words');
  const outcome = find('outcome');
  const reason = find('reason');
  const order = find('order');
  let shown = models;
  let page = 0;

  const make = (tag, text, className) => {
    const node = document.createElement(tag);
    if (text) node.textContent = text;
    if (className) node.className = className;
    return node;
  };

  for (const code of Object.keys(data.reasons).sort()) {
    const option = make('option', code + ' (' + data.reasons[code] + ')');
    option.value = code;
    reason.append(option);
  }

  const picture = (model, ending, caption) => {
    const figure = make('figure');
    const image = make('img', '', 'model');
    image.loading = 'lazy';
    image.width = 180;
    image.height = 135;
    image.alt = (model.shown || model.file) + ', ' + caption;
    image.src = model.stem + ending;
    figure.append(image, make('figcaption', caption));
    return figure;
  };

  const pictures = (model) => {
    const cell = make('td');
    const box = make('div', '', 'pictures');
    if (model.pictures > 0) box.append(picture(model, '-before.png', 'before'));
    if (model.pictures > 1) box.append(picture(model, '-after.png', 'after'));
    if (model.pictures === 0) box.append(make('span', 'no picture', 'soft'));
    cell.append(box);
    return cell;
  };

  const nameCell = (model) => {
    const cell = make('td', '', 'name');
    if (model.result === 'rejected') {
      cell.textContent = model.shown || model.file;
    } else {
      const link = make('a', model.shown || model.file);
      link.href = model.file.split('/').map(encodeURIComponent).join('/');
      cell.append(link);
    }
    if (model.report) {
      const link = make('a', 'report');
      link.href = model.stem + '.html';
      link.setAttribute('aria-label', 'report on ' + (model.shown || model.file));
      cell.append(make('br'), link);
    }
    return cell;
  };

  const outcomeCell = (model) => {
    const cell = make('td');
    cell.append(make('span', model.result, 'o-' + model.result));
    if (model.reshaped) cell.append(make('br'), model.reshaped + ' reshaped');
    if (model.left) cell.append(make('br'), model.left + ' left');
    return cell;
  };

  const whyCell = (model) => {
    const cell = make('td');
    if (model.message) cell.append(make('p', model.message));
    const codes = Object.keys(model.why);
    if (codes.length) {
      const list = make('ul', '', 'why');
      for (const code of codes) {
        list.append(make('li', model.why[code][0] + ' × ' + code + ': ' + model.why[code][1]));
      }
      cell.append(list);
    }
    return cell;
  };

  const row = (model) => {
    const line = make('tr');
    const area = model.result === 'rejected' ? '' : model.before + ' → ' + model.after;
    line.append(pictures(model), nameCell(model), outcomeCell(model), make('td', area, 'n'), whyCell(model));
    return line;
  };

  const show = () => {
    const pages = Math.max(1, Math.ceil(shown.length / PAGE));
    page = Math.min(Math.max(0, page), pages - 1);
    find('models').tBodies[0].replaceChildren(...shown.slice(page * PAGE, (page + 1) * PAGE).map(row));
    find('count').textContent =
      shown.length + ' of ' + models.length + ' models' + (pages > 1 ? ', page ' + (page + 1) + ' of ' + pages : '');
    find('back').disabled = page === 0;
    find('on').disabled = page === pages - 1;
  };

  const orders = {
    name: () => 0,
    open: (a, b) => b.open - a.open,
    reshaped: (a, b) => b.reshaped - a.reshaped,
    gain: (a, b) => b.before - b.after - (a.before - a.after),
  };

  const fits = (model) => {
    const text = words.value.trim().toLowerCase();
    const wanted = outcome.value;
    const why = reason.value;
    return (!text || model.file.toLowerCase().includes(text))
      && (!wanted || (wanted === 'open' ? model.open > 0 : model.result === wanted))
      && (!why || why in model.why || model.cause === why);
  };

  const choose = () => {
    shown = models.filter(fits).sort(orders[order.value]);
    page = 0;
    show();
  };

  words.addEventListener('input', choose);
  [outcome, reason, order].forEach((each) => each.addEventListener('change', choose));
  const turn = (by) => {
    page += by;
    show();
    find('models').scrollIntoView({ block: 'start' });
  };
  find('back').addEventListener('click', () => turn(-1));
  find('on').addEventListener('click', () => turn(1));
  choose();
})();
