// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/shell/finder_actions.h"

#include "app/desk/formats.h"
#include "app/shell/finder_papers.h"
#include "app/shell/places.h"
#include "app/theme/tokens.h"
#include "core/shop/films_to_cut.h"
#include "db/journal/undo_words.h"

#include <QCoreApplication>

#include <algorithm>

namespace holdfast::app {

namespace {

class Acts {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::FinderActions)

public:
    explicit Acts(ShopDesk& desk)
        : m_desk(desk) {}

    std::vector<FinderEntry> all() {
        addStock();
        addSettings();
        addOrders();
        addShell();
        addFile();
        return std::move(m_entries);
    }

private:
    void add(const QString& title, const QString& second, const char* icon, const QString& also,
             FinderTarget target, const QKeySequence& keys = {}) {
        m_entries.push_back({.kind = FinderKind::Action,
                             .title = title,
                             .second = second,
                             .also = also,
                             .iconName = QString::fromLatin1(icon),
                             .shade = {},
                             .keys = keys,
                             .target = std::move(target)});
    }
    void slip(SlipName name, const QString& title, const QString& second, const char* icon,
              const QString& also = {}) {
        add(title, second, icon, also, AskSlip{name, {}});
    }
    void part(SettingsPart name, const QString& title, const QString& second, const QString& also) {
        SlipTarget matter;
        matter.settings = name;
        add(title, second, "back-room", also, AskSlip{SlipName::Settings, matter});
    }
    void inBackRoom(RoomSection section, const QString& title, const QString& second, const char* icon,
                    const QString& also) {
        SlipTarget matter;
        matter.section = section;
        add(title, second, icon, also, GoTo{PlaceName::BackRoom, matter});
    }
    void inFigures(FigureQuestion question, const QString& title, const QString& second, const char* icon,
                   const QString& also) {
        SlipTarget matter;
        matter.question = question;
        add(title, second, icon, also, GoTo{PlaceName::Figures, matter});
    }
    void inOrderBook(const QString& title, const QString& second, const QString& also) {
        add(title, second, "order-book", also, GoTo{PlaceName::OrderBook, {}});
    }

    void addStock() {
        slip(SlipName::RecordReading, tr("Record a reading"),
             tr("humidity and temperature of a storage place"), "humidity", tr("climate damp"));
        slip(SlipName::ImportReadings, tr("Import readings"), tr("the file of a climate logger"),
             "thermometer", tr("csv log humidity temperature"));
        slip(SlipName::ReceiveRoll, tr("Receive a roll"), tr("film onto the shelf"), "roll",
             tr("new buy delivery vinyl"));
        slip(SlipName::ReceiveBlanks, tr("Receive blanks"), tr("a delivery onto the rail"), "blank-rail",
             tr("stock buy shirts tees garments new"));
        slip(SlipName::MarkDry, tr("Mark a load dry"), tr("washed blanks"), "washed", tr("wash laundry"));
        slip(SlipName::CheckPress, tr("Check a press"), tr("temperatures at the marked spots"), "press-walk",
             tr("platen heat calibrate"));
        slip(SlipName::AddFilm, tr("Add a film"), tr("finish, shade and its recipe"), "film-shelf",
             tr("new colour vinyl"));
        slip(SlipName::AddStyle, tr("Add a blank style"), tr("a garment to decorate"), "tag",
             tr("new shirt tee hoodie colour size"));
        slip(SlipName::AddPress, tr("Add a press"), tr("its platen and how it heats"), "press-walk",
             tr("new machine"));
        slip(SlipName::AddFair, tr("Add a fair"), tr("days, hours and costs of a stall"), "fair-table",
             tr("new market event"));
    }

    void addSettings() {
        slip(SlipName::Settings, tr("Settings"), tr("shop, prices, opening hours, washing, cutting, rest"),
             "back-room", tr("options preferences numbers"));
        part(SettingsPart::Shop, tr("Change the shop’s name"), tr("and where orders are collected"),
             tr("address bank account invoice foot settings"));
        part(SettingsPart::Money, tr("Change prices"), tr("margin, minutes, overhead, deposit, currency"),
             tr("discount cost tax money settings rounding rate"));
        part(SettingsPart::Bill, tr("Change tax, extras and rush"),
             tr("rate and rounding of the tax, what many cost less, usual extras, quotations"),
             tr("vat sales tax quantity discount surcharge delivery settings"));
        part(SettingsPart::PriceList, tr("Change the price list"), tr("prices of styles and decals"),
             tr("board tariff settings money"));
        part(SettingsPart::Hours, tr("Change opening hours"), tr("and closed days"),
             tr("holiday closed week settings time"));
    }

    void addOrders() {
        inOrderBook(tr("Take or give back money"), tr("open the order, then T"),
                    tr("refund pay payment paid cash card deposit owed owing"));
        inOrderBook(tr("Print a quotation"), tr("open the order, then Q"),
                    tr("offer estimate quote valid paper"));
        inOrderBook(tr("Print a receipt"), tr("open the order, then V"), tr("paid payment proof paper"));
        inOrderBook(tr("Make or print an invoice"), tr("open the order, then I"), tr("bill tax paper"));
        inOrderBook(tr("Make a credit note"), tr("open the order, then D"),
                    tr("correct invoice refund cancel reprint paper"));
        inOrderBook(tr("Hand over an order"), tr("open the order, then H"), tr("collect pick up give care"));
        inOrderBook(tr("Change an order’s day or customer"), tr("open the order, then M or U"),
                    tr("promise date phone telephone name later sooner"));
        inOrderBook(tr("Cancel an order"), tr("open the order, then X"), tr("delete remove"));
        inOrderBook(tr("Note what came back"), tr("open the order, then B"),
                    tr("claim complaint return peeled lifted cracked fault warranty"));
        inOrderBook(tr("Confirm a wording"), tr("open the order, then W"),
                    tr("agree spelling text name proof"));
        m_entries.push_back(daySheetEntry());
        slip(SlipName::OrdersFile, tr("Take orders from a file"), tr("of a web shop, all in one action"),
             "order-book", tr("csv import online web shop customers"));
        slip(SlipName::CountTill, tr("Count the till"), tr("the cash of a day against what should be there"),
             "order-book", tr("money cash day end close drawer float register"));
        inFigures(FigureQuestion::Till, tr("See what was counted"), tr("the till, day by day"), "figures",
                  tr("money cash difference missing"));
        inFigures(FigureQuestion::Buy, tr("See what to buy"), tr("blanks and film that run low"), "tag",
                  tr("reorder purchase supplier stock low shopping"));
        m_entries.push_back(buyingListEntry());
    }

    void addShell() {
        if (const auto last = m_desk.file().lastUndoable())
            add(tr("Undo"), words(last->title), "undo", tr("mistake wrong back"), ShellAct::Undo,
                QKeySequence(QKeySequence::Undo));
        if (const auto last = m_desk.file().lastRedoable())
            add(tr("Redo"), words(db::withoutUndo(last->title)), "redo", tr("again undo restore put back"),
                ShellAct::Redo, QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_Z));
        const bool isDay = light() == Light::Day;
        addComputer();
        add(isDay ? tr("Evening light") : tr("Day light"),
            isDay ? tr("dark cloth, for a dim workshop") : tr("undyed cloth, for a bright workshop"),
            "resting", tr("dark bright theme night"), ShellAct::ChangeLight, QKeySequence(Qt::Key_F6));
        add(tr("Show the keys"), tr("of this place and of all"), "search",
            tr("help shortcuts keyboard manual how"), ShellAct::ShowKeys, QKeySequence(Qt::Key_F1));
        add(tr("Larger text"), tr("and all that is about it"), "search", tr("size zoom font big scale"),
            ShellAct::LargerText, QKeySequence(Qt::CTRL | Qt::Key_Plus));
        add(tr("Smaller text"), tr("more fits in"), "search", tr("size zoom font little scale"),
            ShellAct::SmallerText, QKeySequence(Qt::CTRL | Qt::Key_Minus));
        add(tr("Usual text size"), {}, "search", tr("zoom font reset scale"), ShellAct::UsualText,
            QKeySequence(Qt::CTRL | Qt::Key_0));
    }

    void addComputer() {
        inBackRoom(RoomSection::Printers, tr("Choose the printers"), tr("for labels and for sheets"),
                   "printer", tr("printer printing paper label test"));
        inBackRoom(RoomSection::Computer, tr("This computer"), tr("printers, scanner, text size, sound"),
                   "back-room",
                   tr("machine laptop settings volume loud loudness quiet mute noise knock alarm"));
        slip(SlipName::Scanner, tr("Set up a scanner"), tr("what it types before a code"), "search",
             tr("barcode qr code reader prefix"));
        add(tr("About Holdfast"), tr("its version, licence and what it is made with"), "mark",
            tr("program credits license free open source libraries fonts copyright"), ShellAct::About);
    }

    void addFile() {
        add(tr("Back up the shop"), tr("the whole shop in one new file"), "shelf-away",
            tr("backup copy save stick safe"), Errand::BackUp);
        add(tr("Save the due days"), tr("of open orders, as a calendar file"), "order-book",
            tr("calendar ics icalendar export phone dates promise deadline"), Errand::SaveDueDays);
        add(tr("Put the shop back"), tr("as it was in a backup, with a look at what would be lost"), "undo",
            tr("backup restore earlier before return damage"), Errand::PutBackBackup);
        add(tr("Choose a second folder"), tr("where backups go too, such as on a stick"), "shelf-away",
            tr("backup usb disk copy safe"), Errand::ChooseBackupFolder);
        add(tr("Check the shop file"), tr("every row against its history"), "done",
            tr("damage repair whole test"), Errand::CheckFile);
        add(tr("Show what is wrong in the shop file"), tr("rows that are left out, one by one"), "hold",
            tr("damage unreadable broken missing"), Errand::ShowWrong);
        add(tr("Mend the shop file"), tr("rows again as their history has them"), "tick",
            tr("damage repair restore fix"), Errand::MendFile);
        add(tr("Save what can be saved"), tr("of a damaged file, into a new one"), "shelf-away",
            tr("damage rescue recover"), Errand::SaveWhatCanBe);
        add(tr("Open another shop"), tr("a file, a new shop, or the demo"), "order-book",
            tr("new load example"), Errand::OpenAnother);
        add(tr("Bring in news"), tr("what was done on another laptop"), "offline",
            tr("second laptop sync stick changes take in read"), Errand::TakeInNews);
        add(tr("Save news"), tr("what another laptop does not have yet"), "offline",
            tr("second laptop sync stick changes write"), Errand::WriteNews);
        add(tr("Copy for a laptop"), tr("the shop, for a second laptop"), "offline", tr("sync share"),
            Errand::CopyForLaptop);
        add(tr("Make this the workshop’s copy"), tr("when the workshop’s file is lost"), "offline",
            tr("second laptop lost stolen broken disk replace"), Errand::BecomeWorkshop);
    }

    ShopDesk& m_desk;
    std::vector<FinderEntry> m_entries;
};

FinderEntry goTo(const BuiltPlace& place, const QString& second) {
    return {.kind = FinderKind::Place,
            .title = place.words(),
            .second = second,
            .also = QCoreApplication::translate("holdfast::app::FinderActions", "place"),
            .iconName = place.icon(),
            .shade = {},
            .keys = place.keys(),
            .target = GoTo{place.name, {}}};
}

} // namespace

std::vector<FinderEntry> placeEntries() {
    std::vector<FinderEntry> entries;
    for (const BuiltPlace& place : builtPlaces())
        entries.push_back(goTo(place, {}));
    return entries;
}

std::vector<FinderEntry> waitingEntries(ShopDesk& desk) {
    std::vector<FinderEntry> entries;
    const auto wait = [&](PlaceName name, int count, const QString& waiting) {
        if (const BuiltPlace* place = builtPlace(name); place != nullptr && count > 0)
            entries.push_back(goTo(*place, waiting));
    };
    if (desk.awaitsClimate())
        return placeEntries();
    const Walk& walk = desk.walk();
    const int garments = howMany(walk.total - walk.pressed);
    wait(PlaceName::PressWalk, garments,
         Acts::tr("%n garment to press|%n garments to press", nullptr, garments));
    const int decals = howMany(decalsToCut(*desk.shop()));
    wait(PlaceName::CuttingBench, decals, Acts::tr("%n decal to cut|%n decals to cut", nullptr, decals));
    return entries.empty() ? placeEntries() : entries;
}

std::vector<FinderEntry> actionEntries(ShopDesk& desk) {
    return Acts(desk).all();
}

std::vector<FinderEntry> fairEntries(ShopDesk& desk) {
    std::vector<FinderEntry> entries;
    std::vector<const Fair*> fairs;
    for (const Fair& fair : desk.shop()->facts.fairs)
        fairs.push_back(&fair);
    std::ranges::sort(fairs, std::ranges::greater{}, &Fair::firstDay);
    for (const Fair* fair : fairs) {
        SlipTarget matter;
        matter.fair = fair->id;
        entries.push_back(
            {.kind = FinderKind::Action,
             .title = Acts::tr("Change the fair %1").arg(words(fair->name)),
             .second = fair->days() == 1
                           ? date(fair->firstDay)
                           : Acts::tr("%1 to %2").arg(date(fair->firstDay), date(fair->lastDay)),
             .also = {},
             .iconName = QStringLiteral("fair-table"),
             .shade = {},
             .keys = {},
             .target = AskSlip{SlipName::ChangeFair, matter}});
    }
    return entries;
}

} // namespace holdfast::app
