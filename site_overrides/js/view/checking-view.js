/** The page on which a certificate is checked: a file, a pasted code or a picture in, one of seven verdicts in words out. */
const CheckingView = (() => {
  "use strict";

  const FILE_CAP = 20 << 20;
  const LIST_CAP = 1 << 20;
  /** Bytes of a text that may be a code. */
  const TEXT_CAP = 64_000;
  /** Days after which a list is called old. */
  const OLD = 92;
  /** Thousandths in a question. */
  const WEIGHT = 1000;

  /** The browser's own Ed25519 where it has it, else the script's. @param {SubtleCrypto | undefined} subtle @returns {SignatureCheck} */
  function signatureCheck(subtle) {
    return async (signature, message, key) => {
      if (!subtle) return NobleEd25519.verify(signature, message, key);
      try {
        const known = await subtle.importKey("raw", new Uint8Array(key), "Ed25519", false, ["verify"]);
        return await subtle.verify("Ed25519", known, new Uint8Array(signature), new Uint8Array(message));
      } catch {
        return NobleEd25519.verify(signature, message, key);
      }
    };
  }

  /** What each verdict is called, how it looks, and what to do next. */
  function sayings() {
    /** @type {Record<string, {title: string, look: string, next: string}>} */
    const all = {
      genuine: { title: Words.say("Genuine record"), look: "good", next: Words.say("The record is unchanged and its signer is on the trust list. Now compare the name with an identity card, and read the two lines above. Where the paper says something else than this, the paper is false. It is a record of training, not permission to work.") },
      example: { title: Words.say("Example only"), look: "care", next: Words.say("It was made to try things out, or its key is published, so that anybody can sign with it. It is worth nothing at work. Do not let the work start on it: ask for the real certificate.") },
      "unknown-signer": { title: Words.say("Genuine, but signer unknown"), look: "care", next: Words.say("The record is unchanged since it was signed, but it is not known here who signed it: anybody can sign something. Do not rely on it. Ask the employer for their checking page or a newer trust list.") },
      "out-of-date": { title: Words.say("Out of date"), look: "hold", next: Words.say("The record is genuine, but today is outside its dates. Do not let the work start on it. Training has to be renewed. For a day in the past, read between which days it held.") },
      withdrawn: { title: Words.say("Withdrawn"), look: "hold", next: Words.say("The signer has taken this record back. Do not let the work start on it. Ask the employer why.") },
      altered: { title: Words.say("Altered"), look: "hold", next: Words.say("The record is not what was signed. Do not rely on anything in it. Keep the file, and tell the employer named on the paper.") },
      unreadable: { title: Words.say("No certificate found"), look: "care", next: Words.say("There is no certificate in this that can be read here. Try the PDF itself, not a photo or scan of it, or the whole code. This says nothing about whether the paper is genuine.") },
    };
    return all;
  }

  /** A check mark, an exclamation or a cross, drawn, for whom colour says nothing. @param {string} look */
  function sign(look) {
    const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg");
    svg.setAttribute("viewBox", "0 0 64 64");
    svg.setAttribute("class", "verdict-sign");
    svg.setAttribute("aria-hidden", "true");
    const path = document.createElementNS("http://www.w3.org/2000/svg", "path");
    path.setAttribute("d", {
      good: "M4 4h56v56H4zM17 33l11 12 20-25",
      care: "M32 5 61 59H3zM32 25v15M32 48v3",
      hold: "M20 4h24l16 16v24L44 60H20L4 44V20zM22 22l20 20M42 22 22 42",
    }[look] ?? "");
    svg.append(path);
    return svg;
  }

  /** @param {HTMLElement} place @param {() => Date} now @param {string} language */
  function mount(place, now, language) {
    const signed = signatureCheck(crypto.subtle);
    const answer = Dom.one(place, "[data-answer]");
    /** @type {TrustListFacts | null} */
    let trust = null;
    /** @type {Uint8Array | null} */
    let last = null;
    /** How many were given to look at: the answer belongs to the last. */
    let turn = 0;
    Dom.one(place, "[data-without]").hidden = true;
    const ready = startTrust();
    Dom.one(place, "[data-ways]").hidden = false;
    Dom.one(place, "[data-trusted]").hidden = false;

    /** @type {HTMLInputElement} */
    const file = Dom.one(place, "[data-drop] input");
    file.addEventListener("change", () => file.files?.[0] && void take(file.files[0]));
    dropping(Dom.one(place, "[data-drop]"), (dropped) => void take(dropped));
    /** @type {HTMLTextAreaElement} */
    const code = Dom.one(place, "textarea");
    Dom.one(place, "[data-code]").addEventListener("submit", (event) => {
      event.preventDefault();
      void check(fromCode(code.value));
    });
    /** @type {HTMLInputElement} */
    const list = Dom.one(place, "[data-drop-list] input");
    list.addEventListener("change", () => list.files?.[0] && void takeList(list.files[0]));
    dropping(Dom.one(place, "[data-drop-list]"), (dropped) => void takeList(dropped));
    void scanning();

    async function startTrust() {
      const text = place.dataset.trust ?? "";
      try {
        if (text) trust = await TrustList.read(text, signed);
      } catch (error) {
        // Whatever it is, without a list no signer is known, and that is said.
        if (!(error instanceof TrustList.Refused)) console.error(error);
      }
      showTrust();
    }

    function showTrust() {
      const line = trust
        ? Words.say("List no. {number} of {holder}. Signers and withdrawals known up to {day}, {age} days ago.", {
            number: trust.number, holder: trust.holder, day: day(trust.date), age: age(trust.date),
          })
        : place.dataset.trust ? Words.say("None: the trust list in this page is not as it was signed. Ask the employer for a new checking page.")
        : Words.say("None: this site was built without a trust list. It can tell whether a record was altered, but not who signed it.");
      Dom.one(place, "[data-trust-line]").textContent = [line, doubt()].filter(Boolean).join(" ");
      Dom.one(place, "[data-drop-list]").hidden = !trust;
    }

    /** @param {string} date */
    function day(date) {
      return Dates.isDay(date) ? Dates.long(date, language) : date;
    }

    const today = () => Dates.day(now());

    /** @param {string} date */
    function age(date) {
      return Math.max(0, Math.round((Date.parse(today()) - Date.parse(date)) / 86_400_000));
    }

    /** What was said before does not stand while the next one is looked at, nor where that cannot be read. */
    function begin() {
      answer.replaceChildren();
      turn += 1;
      return turn;
    }

    /** @param {File} taken */
    async function take(taken) {
      const mine = begin();
      const bytes = taken.size > FILE_CAP ? null : await taken.arrayBuffer().then((buffer) => new Uint8Array(buffer), () => null);
      if (mine !== turn) return;
      await check(bytes && (RecordInPdf.isPdf(bytes) ? RecordInPdf.find(bytes) : fromText(bytes)));
    }

    /** A file that is no PDF: the record itself, or a text with the code. @param {Uint8Array} bytes */
    function fromText(bytes) {
      const text = bytes.length <= TEXT_CAP ? new TextDecoder().decode(bytes) : "";
      return CertificateCode.begins(text) ? fromCode(text) : bytes;
    }

    /** @param {string} text */
    function fromCode(text) {
      try {
        return CertificateCode.read(text);
      } catch {
        return null;
      }
    }

    /** @param {Uint8Array | null} bytes */
    async function check(bytes) {
      const mine = begin();
      last = bytes;
      await ready;
      const verdict = await Verdict.of(bytes ?? new Uint8Array(0), trust, today(), signed);
      // Whoever gave another one meanwhile is told of that one alone.
      if (mine === turn) show(verdict);
    }

    /** @param {VerdictFacts} verdict */
    function show(verdict) {
      const saying = sayings()[verdict.kind];
      const listed = trust && verdict.kind === "withdrawn" ? ` (${Words.say("list of {day}", { day: day(trust.date) })})` : "";
      const heading = Dom.make("h2", { tabindex: "-1" }, saying.title + listed);
      const card = Dom.make("div", { class: `verdict verdict-${saying.look}`, "data-verdict": verdict.kind },
        Dom.make("div", { class: "verdict-head" }, sign(saying.look), heading));
      const subject = verdict.kind === "altered" ? null : verdict.certificate?.credentialSubject;
      if (subject && verdict.kind !== "example" && (subject.example || verdict.key?.demo)) {
        card.append(Dom.make("p", { class: "verdict-example" }, Words.say("Example only: made to try things out. It is worth nothing at work.")));
      }
      if (subject && doubt()) card.append(Dom.make("p", { class: "verdict-example" }, doubt()));
      if (subject && verdict.kind === "unknown-signer") {
        card.append(Dom.make("p", { class: "verdict-example" }, Words.say("Nobody known stands behind what follows; it is only what the record says of itself.")));
      }
      if (subject) card.append(strength(subject));
      card.append(Dom.make("p", { class: "verdict-next" }, saying.next));
      if (subject) card.append(facts(verdict, subject));
      answer.replaceChildren(card);
      heading.focus({ preventScroll: true });
      card.scrollIntoView({ block: "start" });
    }

    /** @param {any} subject */
    function strength(subject) {
      const check = subject.check === "supervised"
        ? [Words.say("Supervised"), Words.say("A named person confirmed who answered.")]
        : [Words.say("Self-recorded"), Words.say("Nobody confirmed who answered.")];
      const practical = subject.practical === "observed"
        ? [Words.say("Observed"), Words.say("A named assessor saw all of the practical done.")]
        : [Words.say("Not observed"), Words.say("No assessor vouches that this person can do the work.")];
      return Dom.make("div", { class: "verdict-strength" },
        ...[check, practical].map(([title, meaning]) => Dom.make("p", {}, Dom.make("b", {}, title), meaning)));
    }

    /** @param {VerdictFacts} verdict @param {any} subject */
    function facts(verdict, subject) {
      // A line breaks between the two days, not within one.
      const dates = [verdict.certificate.validFrom.slice(0, 10), subject.retrainBy].map((each) => day(each).replaceAll(" ", "\u00a0")).join(" – ");
      /** @type {[string, string][]} */
      const lines = [
        [Words.say("Name"), subject.name],
        [Words.say("Staff number"), subject.person],
        [Words.say("Employer"), [subject.employer, subject.workplace].filter(Boolean).join(", ")],
        [Words.say("Course"), `${subject.title}, ${subject.version}`],
        [Words.say("Equipment"), subject.equipment],
        [Words.say("Holds"), dates],
        [Words.say("Trained"), day(subject.trained)],
        [Words.say("Check taken"), day(subject.checked)],
        [Words.say("Practical seen"), day(subject.observed)],
        [Words.say("Marks"), Words.say("{marks} of {of}, {cut} % needed, must-pass {right} of {facts}", { marks: subject.marks / WEIGHT, of: subject.of / WEIGHT, cut: subject.cut, right: subject.mustPass[0], facts: subject.mustPass[1] })],
        [Words.say("Attempt"), String(subject.attempt)],
        [Words.say("Trainer"), subject.trainer],
        [Words.say("Assessor"), subject.assessor],
        [Words.say("Identity"), subject.identity],
        [Words.say("Signed by"), verdict.key ? `${verdict.key.holder}, ${verdict.key.role}` : Words.say("unknown here")],
        // What ties the record to the sheets signed in ink, to its own paper, and to the course as it was that day.
        [Words.say("Language"), subject.language],
        [Words.say("Rules of"), subject.profile],
        [Words.say("Fingerprint"), subject.fingerprint],
        [Words.say("Observations"), subject.observations.join(", ")],
        [Words.say("Certificate"), verdict.certificate.id.replace("urn:uuid:", "")],
        [Words.say("Contents"), (subject.digest.slice(0, 16).match(/.{4}/g) ?? []).join(" ")],
      ];
      if (verdict.withdrawn) {
        lines.unshift([Words.say("Withdrawn on"), [day(verdict.withdrawn.on), verdict.withdrawn.reason].filter(Boolean).join(": ")]);
      }
      if (trust) lines.push([Words.say("Withdrawals"), Words.say("known up to {day}, {age} days ago", { day: day(trust.date), age: age(trust.date) })]);
      return Dom.make("dl", { class: "verdict-facts" },
        ...lines.filter(([, value]) => value).flatMap(([name, value]) => [Dom.make("dt", { class: "label" }, name), Dom.make("dd", {}, value)]));
    }

    /** What the day of the list makes doubtful; empty where it makes nothing so. A zone puts a list one day ahead. */
    function doubt() {
      if (!trust) return "";
      if (age(trust.date) > OLD) return Words.say("The trust list is old: what was withdrawn since is not known here. Ask the employer for a newer one.");
      return Date.parse(trust.date) - Date.parse(today()) > 86_400_000 ? Words.say("The clock here is behind the day of the trust list: set it, for nothing that is said of days can be relied on.") : "";
    }

    /** @param {File} taken */
    async function takeList(taken) {
      const status = Dom.one(place, "[data-list-answer]");
      try {
        if (taken.size > LIST_CAP) throw new TrustList.Refused("unreadable");
        const newer = await TrustList.read(await taken.text(), signed);
        TrustList.accept(newer, trust);
        trust = newer;
        showTrust();
        status.textContent = Words.say("The newer list is in use until this page is closed.");
        if (last) await check(last);
      } catch (error) {
        if (!(error instanceof TrustList.Refused)) throw error;
        status.textContent = {
          unreadable: Words.say("Not taken: this is not a trust list. Ask the employer for the file trust.json."),
          altered: Words.say("Not taken: the list is not what was signed. Ask the employer for it again."),
          older: Words.say("Not taken: this list is not newer than the one in use."),
          stranger: Words.say("Not taken: it is not signed by the signer of the list in use. Ask the employer for a new checking page."),
          "none-before": Words.say("Not taken: this page knows no signer who could vouch for it."),
        }[error.reason];
      }
    }

    async function scanning() {
      if (typeof BarcodeDetector === "undefined") return;
      if (!(await BarcodeDetector.getSupportedFormats()).includes("qr_code")) return;
      const detector = new BarcodeDetector({ formats: ["qr_code"] });
      Dom.one(place, "[data-scan-none]").hidden = true;
      Dom.one(place, "[data-scan-here]").hidden = false;
      /** @type {HTMLInputElement} */
      const photo = Dom.one(place, "[data-scan-here] input");
      photo.addEventListener("change", async () => {
        if (!photo.files?.[0]) return;
        const mine = begin();
        try {
          const found = await detector.detect(await createImageBitmap(photo.files[0]));
          if (mine !== turn) return;
          const text = found.map((each) => each.rawValue).find(CertificateCode.begins) ?? "";
          code.value = text;
          await check(fromCode(text));
        } catch {
          await check(null);
        }
      });
    }
  }

  /** Takes the first file dropped on a place. @param {HTMLElement} place @param {(file: File) => void} take */
  function dropping(place, take) {
    const show = (/** @type {boolean} */ on) => place.classList.toggle("dropping", on);
    place.addEventListener("dragover", (event) => {
      event.preventDefault();
      show(true);
    });
    place.addEventListener("dragleave", () => show(false));
    place.addEventListener("drop", (event) => {
      event.preventDefault();
      show(false);
      const file = event.dataTransfer?.files[0];
      if (file) take(file);
    });
  }

  return { mount, signatureCheck };
})();
