// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command_line/papers.h"

#include "app/command_line/verbs.h"
#include "app/desk/formats.h"
#include "app/papers/bag_tag.h"
#include "app/papers/buying_list.h"
#include "app/papers/care_card_paper.h"
#include "app/papers/claim_ticket.h"
#include "app/papers/day_sheet.h"
#include "app/papers/paper_files.h"
#include "app/papers/paper_making.h"
#include "app/papers/quotation_paper.h"
#include "app/papers/roll_label.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/cut_file.h"
#include "app/places/cutting_bench/cut_sheet.h"
#include "app/theme/type.h"
#include "core/cutting/nest.h"
#include "core/shop/films_to_cut.h"

#include <QCoreApplication>
#include <QDir>
#include <QFileInfo>
#include <QPdfWriter>

#include <algorithm>
#include <iterator>

namespace holdfast::app {

namespace {

// By rounds and not by time, so that the same shop gives the same cut sheets.
constexpr std::uint64_t kNestRounds = 200;
constexpr std::chrono::milliseconds kNestAtMost{10'000};

struct PapersWords {
    Q_DECLARE_TR_FUNCTIONS(holdfast::app::PapersVerb)
};

// Papers of one kind: "claim-tickets" is the name of their PDF.
struct PaperFamily {
    QString name;
    QString title;
    QString (*counted)(int); // "3 claim tickets"
    std::vector<Paper> papers;
};

std::vector<OrderId> openOrders(const ShopFacts& facts) {
    std::vector<OrderId> orders;
    for (const Order& order : facts.orders)
        if (order.isOpen())
            orders.push_back(order.id);
    return orders;
}

std::vector<PaperFamily> familiesOf(const ReckonedShop& shop, const ShopFigures& figures) {
    PaperFamily tickets{QStringLiteral("claim-tickets"),
                        PapersWords::tr("Claim tickets"),
                        [](int n) { return PapersWords::tr("%n claim ticket|%n claim tickets", nullptr, n); },
                        {}};
    PaperFamily cards{QStringLiteral("care-cards"),
                      PapersWords::tr("Care cards"),
                      [](int n) { return PapersWords::tr("%n care card|%n care cards", nullptr, n); },
                      {}};
    PaperFamily tags{QStringLiteral("bag-tags"),
                     PapersWords::tr("Bag tags"),
                     [](int n) { return PapersWords::tr("%n bag tag|%n bag tags", nullptr, n); },
                     {}};
    PaperFamily labels{QStringLiteral("roll-labels"),
                       PapersWords::tr("Roll labels"),
                       [](int n) { return PapersWords::tr("%n roll label|%n roll labels", nullptr, n); },
                       {}};
    PaperFamily quotations{
        QStringLiteral("quotations"),
        PapersWords::tr("Quotations"),
        [](int n) { return PapersWords::tr("%n page of quotations|%n pages of quotations", nullptr, n); },
        {}};
    for (const OrderId order : openOrders(shop.facts)) {
        if (shop.facts.orders.at(order).state == OrderState::Quoted)
            std::ranges::move(quotationPapers(shop, order), std::back_inserter(quotations.papers));
        tickets.papers.push_back(claimTicket(shop, order));
        for (const Garment* garment : pressedGarments(shop, order))
            cards.papers.push_back(careCardPaper(shop, garment->id));
        for (const Garment* garment : garmentsHere(shop, order))
            tags.papers.push_back(bagTag(shop, garment->id));
    }
    for (const FilmRoll& roll : shop.facts.rolls)
        if (roll.state == RollState::OnShelf)
            labels.papers.push_back(labelOfRoll(shop, roll.id));
    const WhatToBuy buy = whatToBuy(shop, figures.blankUse, figures.nextFair, figures.bring);
    return {
        {QStringLiteral("day-sheet"), PapersWords::tr("Day sheet"),
         [](int n) { return PapersWords::tr("%n page of day sheet|%n pages of day sheet", nullptr, n); },
         daySheet(shop)},
        {QStringLiteral("to-buy"), PapersWords::tr("To buy"),
         [](int n) { return PapersWords::tr("%n page of what to buy|%n pages of what to buy", nullptr, n); },
         buy.isAnyBought() ? buyingList(shop, buy) : std::vector<Paper>{}},
        std::move(quotations),
        std::move(tickets),
        std::move(cards),
        std::move(tags),
        std::move(labels)};
}

std::vector<Nest> nestsOf(const ReckonedShop& shop) {
    StripSearch search;
    search.budget = kNestAtMost;
    search.rounds = kNestRounds;
    std::vector<Nest> all;
    for (const FilmToCut& film : filmsToCut(shop)) {
        // A film that no roll may be taken for has nothing to cut from: report cut says why.
        auto nests = nestFilm(shop, film, usualWish(shop, film), &search);
        if (nests.ok())
            std::ranges::move(nests->nests, std::back_inserter(all));
    }
    return all;
}

class PapersInto {
public:
    explicit PapersInto(const QString& folder)
        : m_folder(folder) {}

    Result<Done> family(const PaperFamily& family) {
        if (family.papers.empty())
            return Done{};
        const auto drawn = pdf(family.name, family.title,
                               [&](QPdfWriter& writer) { return drawPapers(writer, family.papers, {}); });
        if (!drawn.ok())
            return drawn;
        for (const Paper& paper : family.papers)
            if (const auto written = text(paper.name + QStringLiteral(".svg"), paperSvg(paper));
                !written.ok())
                return written;
        m_counted << family.counted(howMany(family.papers.size()));
        return Done{};
    }

    Result<Done> cutSheets(const ReckonedShop& shop) {
        const std::vector<Nest> nests = nestsOf(shop);
        if (nests.empty())
            return Done{};
        const CutFileWish wish;
        const auto drawn =
            pdf(QStringLiteral("cut-sheets"), PapersWords::tr("Cut sheets"), [&](QPdfWriter& writer) {
                writer.setPageSize(QPageSize(QPageSize::A4));
                return drawCutSheets(writer, shop, nests, wish, [](double) { return true; });
            });
        if (!drawn.ok())
            return drawn;
        for (const Nest& nest : nests) {
            const auto sheet = cutFileOf(shop, nest, wish);
            if (!sheet.ok())
                return sheet.error();
            const QString name = QStringLiteral("cut-file-%1.svg").arg(rollLabel(shop.facts, nest.roll));
            if (const auto written = text(name, *sheet); !written.ok())
                return written;
        }
        m_counted << PapersWords::tr("%n cut file|%n cut files", nullptr, howMany(nests.size()));
        return Done{};
    }

    std::string told() const {
        return plain(PapersWords::tr("Wrote into %1: %2")
                         .arg(m_folder.path(), m_counted.join(QStringLiteral(", ")))) +
               "\n";
    }

private:
    // Where a file of this name goes; an error where something else is there.
    Result<QString> pathOf(const QString& name) const {
        const QFileInfo there(m_folder.filePath(name));
        if (there.isSymLink() || (there.exists() && !there.isFile()))
            return plainError(
                inWindow(PapersWords::tr("%1 is in the way and is not a file of Holdfast’s; nothing "
                                         "more was written.")
                             .arg(there.filePath())));
        return there.filePath();
    }

    Result<Done> pdf(const QString& name, const QString& title,
                     const std::function<Result<Drawn>(QPdfWriter&)>& draw) const {
        const auto path = pathOf(name + QStringLiteral(".pdf"));
        if (!path.ok())
            return path.error();
        const auto drawn = writePdf(*path, title, draw);
        return drawn.ok() ? Result<Done>{Done{}} : drawn.error();
    }

    Result<Done> text(const QString& name, const std::string& whole) const {
        const auto path = pathOf(name);
        return path.ok() ? writeText(*path, whole) : path.error();
    }

    QDir m_folder;
    QStringList m_counted;
};

} // namespace

Result<std::string> papers(const Arguments& arguments, const Clock& clock) {
    const auto read = shopAndFigures(arguments, clock);
    if (!read.ok())
        return read.error();
    const auto& [shop, figures] = *read;
    const QString folder = words(arguments.target.string());
    if (!QDir().mkpath(folder))
        return plainError(
            said("The folder {folder} could not be made.", {{"folder", arguments.target.string()}}));
    fontOf(Type::Body); // loads the fonts
    PapersInto into(folder);
    for (const PaperFamily& family : familiesOf(*shop, figures))
        if (const auto written = into.family(family); !written.ok())
            return written.error();
    if (const auto written = into.cutSheets(*shop); !written.ok())
        return written.error();
    return into.told();
}

} // namespace holdfast::app
