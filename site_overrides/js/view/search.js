/** The search page: what is typed is looked up in the page's own data, at every key. */
const Search = (() => {
  const MOST = 30;
  /** A screen reader hears the count when typing pauses, not at every key. */
  const PAUSE = 400;

  /** @type {SearchFolded[]} */
  let prepared = [];
  /** @type {(() => void)[]} */
  const mounted = [];

  /** Called by `search-data.js` of the site. @param {SearchEntry[]} entries */
  function receive(entries) {
    prepared = SearchMatch.prepare(entries);
    for (const show of mounted) show();
  }

  /** @param {HTMLElement} place */
  function mount(place) {
    const data = document.getElementById("search-data");
    if (data) receive(JSON.parse(data.textContent || "[]"));
    mountAt(place);
  }

  /** @param {HTMLElement} place */
  function mountAt(place) {
    const form = Dom.one(place, "form");
    /** @type {HTMLInputElement} */
    const field = Dom.one(place, "input");
    const results = Dom.one(place, "[data-results]");
    const count = Dom.one(place, "[role=status]");
    let timer = 0;
    Dom.one(place, "[data-without]").hidden = true;
    form.hidden = false;
    field.addEventListener("input", show);
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      step(0);
    });
    place.addEventListener("keydown", (event) => {
      const at = links().indexOf(/** @type {HTMLAnchorElement} */ (document.activeElement));
      if (event.key === "ArrowDown") step(at + 1);
      else if (event.key === "ArrowUp" && at > 0) step(at - 1);
      else if ((event.key === "ArrowUp" && at === 0) || (event.key === "Escape" && at >= 0)) field.focus();
      else return;
      event.preventDefault();
    });
    mounted.push(show);
    show();

    /** @returns {HTMLAnchorElement[]} */
    function links() {
      return Dom.all(results, "a");
    }

    /** @param {number} to */
    function step(to) {
      links()[to]?.focus();
    }

    function show() {
      const query = field.value;
      const hits = SearchMatch.find(prepared, query, MOST);
      results.replaceChildren(...hits.map((hit) => line(hit, query)));
      clearTimeout(timer);
      timer = setTimeout(() => {
        const { none = "", one = "", many = "" } = place.dataset;
        count.textContent = !query.trim() ? "" : hits.length === 0 ? none : hits.length === 1 ? one : many.replace("{count}", String(hits.length));
      }, PAUSE);
    }
  }

  /** @param {SearchHit} hit @param {string} query */
  function line(hit, query) {
    const [title, kind, address] = hit.entry;
    return Dom.make("li", {}, Dom.make("a", { class: "search-hit", href: address },
      Dom.make("span", { class: "search-kind label" }, kind),
      Dom.make("span", { class: "search-title" }, ...marked(title, query)),
      Dom.make("span", { class: "search-text" }, ...marked(SearchMatch.snippet(hit), query))));
  }

  /** @param {string} text @param {string} query @returns {(string | HTMLElement)[]} */
  function marked(text, query) {
    return SearchMatch.pieces(text, query).map((piece) => piece.hit ? Dom.make("mark", {}, piece.text) : piece.text);
  }

  return { receive, mount };
})();
