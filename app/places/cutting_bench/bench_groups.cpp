// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/cutting_bench/bench_groups.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/cutting_bench/bench_words.h"
#include "app/places/cutting_bench/film_inks.h"
#include "app/theme/drawings.h"
#include "app/theme/measures.h"
#include "app/theme/stitch.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"

#include <QFontMetricsF>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <map>

namespace holdfast::app {

namespace {

constexpr int kGroupRow = 48;
constexpr int kMostRows = 8;
constexpr double kPicture = 38;

} // namespace

BenchGroups::BenchGroups(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("onThisFilm"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setCursor(Qt::PointingHandCursor);
}

void BenchGroups::show(const BenchModel& model) {
    m_groups.clear();
    if (!model.film()) {
        updateGeometry();
        return;
    }
    const ShopFacts& facts = model.facts();
    m_film = colourOf(facts.films.at(model.film()->film).rgb);
    struct Alike {
        DecalOnGarment first;
        bool isOneGarment = true;
        int count = 0;
    };
    std::vector<Alike> alike;
    std::map<std::pair<OrderId, QString>, std::size_t> places;
    for (const Nest& nest : model.nests())
        for (const NestedDecal& nested : nest.decals) {
            const DecalOnGarment decal = model.decal(nested.decal);
            if (!decal.decal)
                continue;
            const auto [place, isNew] =
                places.try_emplace(std::pair{decal.garment->order, likenessOf(*decal.decal)}, alike.size());
            if (isNew)
                alike.push_back({decal, true, 0});
            Alike* found = &alike[place->second];
            found->isOneGarment = found->isOneGarment && found->first.garment == decal.garment;
            ++found->count;
        }
    QStringList said;
    for (const Alike& each : alike) {
        const Decal& decal = *each.first.decal;
        const QString number = each.isOneGarment ? decalNumber(facts, each.first)
                                                 : QString::number(facts.orderOf(*each.first.garment).number);
        const QString title = tr("%1 %2, %3")
                                  .arg(number, words(decal.describe()),
                                       withinLine(words(facts.styleOf(*each.first.garment).name)));
        m_groups.append({decal.id, title, sizeWords(decal.width, decal.height), decal, each.count});
        if (m_groups.size() <= kMostRows)
            said.append(each.count > 1 ? tr("%1, %2 alike").arg(title).arg(each.count) : title);
    }
    if (m_groups.size() > kMostRows)
        said.append(tr("and %1 more").arg(m_groups.size() - kMostRows));
    setAccessibleName(tr("On this film"));
    setAccessibleDescription(said.join(QStringLiteral("; ")));
    updateGeometry();
    update();
}

QSize BenchGroups::sizeHint() const {
    return {300, shown() * kGroupRow};
}

void BenchGroups::showAll() {
    m_showsAll = true;
    updateGeometry();
    update();
}

int BenchGroups::shown() const {
    const auto all = static_cast<int>(m_groups.size());
    return m_showsAll ? all : std::min(kMostRows, all);
}

void BenchGroups::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const int from = std::max(0, event->rect().top() / kGroupRow);
    const int to = std::min(shown() - 1, event->rect().bottom() / kGroupRow);
    for (int at = from; at <= to; ++at)
        paintGroup(painter, QRectF(0, at * kGroupRow, width(), kGroupRow), m_groups[at]);
}

void BenchGroups::paintGroup(QPainter& painter, const QRectF& row, const BenchGroup& group) {
    const Tokens& dyes = tokens();
    const QRectF box(row.left(), row.center().y() - kPicture / 2, kPicture, kPicture);
    const FilmInks inks(m_film);
    paintSwatch(painter, box, inks.film, kChipRadius);
    const QPainterPath& shape = m_shapes.of(group.decal);
    const QRectF ink = shape.boundingRect();
    if (!ink.isEmpty()) {
        const double scale = (kPicture - 10) / std::max(ink.width(), ink.height());
        QTransform placed;
        placed.translate(box.center().x(), box.center().y());
        placed.scale(-scale, scale); // as it lies, mirrored
        placed.translate(-ink.center().x(), -ink.center().y());
        painter.fillPath(placed.map(shape), inks.line);
    }
    const QString count = group.count > 1 ? tr("%1 alike").arg(group.count) : QString();
    const double counted = widthOf(count, Type::SupportStrong);
    const double left = box.right() + kSpace12;
    const double room = row.right() - counted - kSpace12 - left;
    paintLine(painter, QRectF(left, row.top() + 4, room, 20),
              QFontMetricsF(fontOf(Type::BodyStrong)).elidedText(group.title, Qt::ElideRight, room),
              Type::BodyStrong, dyes.ink);
    paintLine(painter, QRectF(left, row.top() + 25, room, 18), group.size, Type::Small, dyes.ink2);
    paintLine(painter, QRectF(row.right() - counted, row.top(), counted, row.height()), count,
              Type::SupportStrong, dyes.ink);
    painter.fillRect(QRectF(row.left(), row.bottom() - 1, row.width(), 1), dyes.thread);
}

void BenchGroups::mousePressEvent(QMouseEvent* event) {
    const int at = static_cast<int>(event->position().y()) / kGroupRow;
    if (at >= 0 && at < shown())
        emit chosen(m_groups[at].first);
}

} // namespace holdfast::app
