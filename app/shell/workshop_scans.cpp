// SPDX-License-Identifier: GPL-3.0-or-later
// A scanned code opens what it names, in the place that is shown where that can take it, else in its own.

#include "app/desk/formats.h"
#include "app/shell/foot_line.h"
#include "app/shell/slip_edge.h"
#include "app/shell/workshop.h"
#include "core/trade/paper_code.h"
#include "db/tables/numbered.h"

namespace holdfast::app {

namespace {

class ScanWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::ScanWords)

public:
    static Error notOurs(const QString& typed) {
        return refusal(
            tr("“%1” is not a whole code of this shop’s papers. Nothing was opened; scan it again.")
                .arg(typed));
    }
    static Error unknown(const ScannedCode& code) {
        return refusal(tr("This shop has no %1. Nothing was opened.").arg(words(code.label())));
    }
    static Error otherShop(const ScannedCode& code) {
        return refusal(
            tr("This %1 is of another shop, or was misread. Nothing was opened.").arg(words(code.label())));
    }
    static Error usedUp(const ScannedCode& code) {
        return refusal(tr("%1 was used up; there is nothing to open.").arg(words(code.label())));
    }
    static Error maybeHalf(const ScannedCode& code) {
        return refusal(
            tr("%1 may be half a code. Nothing was opened; scan it again, or find the number with Ctrl+K.")
                .arg(words(code.label())));
    }

private:
    // Not named said(), in which lupdate looks for patterns of core.
    static Error refusal(const QString& sentence) { return {inWindow(sentence), {}}; }
};

Result<SlipTarget> rollScanned(const ScannedCode& code, db::Connection& connection, const ShopFacts& facts) {
    const auto roll = db::rollNumbered(connection, code.number);
    if (!roll)
        return ScanWords::unknown(code);
    if (!code.check.empty() && !code.fits(roll->id.value))
        return ScanWords::otherShop(code);
    // What was used up long ago is read no more.
    if (facts.rolls.find(roll->id) == nullptr)
        return ScanWords::usedUp(code);
    SlipTarget matter;
    matter.roll = roll->id;
    matter.film = roll->film;
    return matter;
}

// A number alone, as papers of before bear it, may be half of a longer one unless it is as long as those in
// use.
Result<SlipTarget> orderScanned(const ScannedCode& code, db::Connection& connection) {
    const bool isBare = code.kind == ScannedCode::Kind::Order && code.check.empty();
    if (isBare && static_cast<int>(code.label().size()) < db::orderDigits(connection))
        return ScanWords::maybeHalf(code);
    const auto order = db::orderNumbered(connection, code.number);
    if (!order)
        return ScanWords::unknown(code);
    SlipTarget matter;
    matter.order = order->id;
    std::int64_t id = order->id.value;
    if (code.kind == ScannedCode::Kind::Garment) {
        matter.garment = db::garmentLettered(connection, order->id, code.letter);
        if (!matter.garment)
            return ScanWords::unknown(code);
        id = matter.garment->value;
    }
    if (!code.check.empty() && !code.fits(id))
        return ScanWords::otherShop(code);
    return matter;
}

Result<SlipTarget> scannedMatter(ShopDesk& desk, const ScannedCode& code) {
    const ShopFacts& facts = desk.shop()->facts;
    return desk.file().read([&](db::Connection& connection) {
        return code.kind == ScannedCode::Kind::Roll ? rollScanned(code, connection, facts)
                                                    : orderScanned(code, connection);
    });
}

} // namespace

void Workshop::openScanned(const QString& typed) {
    const auto code = readPaperCode(plain(typed));
    const Result<SlipTarget> found = code ? scannedMatter(m_desk, *code) : ScanWords::notOurs(typed);
    if (!found.ok()) {
        m_foot->showFailure(words(found.error().message));
        return;
    }
    closeFinder();
    m_slips->close();
    const QString label = words(code->label());
    m_foot->showWords(tr("Scanned %1.").arg(label));
    // A whole code of a bag tag takes its garment up there; a number alone may be a slip of the scanner.
    if (m_current == PlaceName::PressWalk && found->garment && code->check.empty()) {
        m_foot->showWords(tr("%1 was scanned without its check letters: shown, not picked up.").arg(label));
        place()->turnTo(*found);
        return;
    }
    if (place()->takeScan(*found))
        return;
    leadTo(found->roll ? PlaceName::FilmShelf : PlaceName::OrderBook, *found);
    place()->takeScan(*found);
}

} // namespace holdfast::app
