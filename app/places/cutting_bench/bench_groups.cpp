#include "app/places/cutting_bench/bench_groups.h"

#include "app/desk/formats.h"
#include "app/desk/garment_words.h"
#include "app/places/cutting_bench/bench_words.h"
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

constexpr int kRow = 52;
constexpr int kMostRows = 8;
constexpr int kMore = 28; // the line that says how many more
constexpr double kPicture = 42;

} // namespace

BenchGroups::BenchGroups(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("onThisFilm"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    setCursor(Qt::PointingHandCursor);
}

void BenchGroups::show(const BenchModel& model, bool isMirrored) {
    m_groups.clear();
    m_isMirrored = isMirrored;
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
            said.append(tr("%1 × %2").arg(each.count).arg(title));
    }
    if (m_groups.size() > shown())
        said.append(tr("and %1 more").arg(m_groups.size() - shown()));
    setAccessibleName(tr("On this film"));
    setAccessibleDescription(said.join(QStringLiteral("; ")));
    updateGeometry();
    update();
}

QSize BenchGroups::sizeHint() const {
    return {300, shown() * kRow + (m_groups.size() > shown() ? kMore : 0)};
}

int BenchGroups::shown() const {
    return std::min(kMostRows, static_cast<int>(m_groups.size()));
}

void BenchGroups::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const int from = std::max(0, event->rect().top() / kRow);
    const int to = std::min(shown() - 1, event->rect().bottom() / kRow);
    for (int at = from; at <= to; ++at)
        paintGroup(painter, QRectF(0, at * kRow, width(), kRow), m_groups[at]);
    if (m_groups.size() > shown())
        paintLine(painter, QRectF(0, shown() * kRow, width(), kMore),
                  tr("and %1 more").arg(m_groups.size() - shown()), Type::Small, tokens().ink2);
}

void BenchGroups::paintGroup(QPainter& painter, const QRectF& row, const BenchGroup& group) {
    const Tokens& dyes = tokens();
    const QRectF box(row.left(), row.center().y() - kPicture / 2, kPicture, kPicture);
    paintSwatch(painter, box, m_film, kChipRadius);
    const QColor line = m_film.lightnessF() < 0.55F ? tokens(Light::Day).card : tokens(Light::Day).ink;
    const QPainterPath& shape = m_shapes.of(group.decal);
    const QRectF ink = shape.boundingRect();
    if (!ink.isEmpty()) {
        const double scale = (kPicture - 10) / std::max(ink.width(), ink.height());
        QTransform placed;
        placed.translate(box.center().x(), box.center().y());
        placed.scale(m_isMirrored ? -scale : scale, scale);
        placed.translate(-ink.center().x(), -ink.center().y());
        painter.fillPath(placed.map(shape), line);
    }
    const QString count = tr("×%1").arg(group.count);
    const double counted = widthOf(count, Type::BodyStrong);
    const double left = box.right() + kSpace12;
    const double room = row.right() - counted - kSpace12 - left;
    paintLine(painter, QRectF(left, row.top() + 6, room, 20),
              QFontMetricsF(fontOf(Type::BodyStrong)).elidedText(group.title, Qt::ElideRight, room),
              Type::BodyStrong, dyes.ink);
    paintLine(painter, QRectF(left, row.top() + 27, room, 18), group.size, Type::Small, dyes.ink2);
    paintLine(painter, QRectF(row.right() - counted, row.top(), counted, row.height()), count,
              Type::BodyStrong, dyes.ink);
    painter.fillRect(QRectF(row.left(), row.bottom() - 1, row.width(), 1), dyes.thread);
}

void BenchGroups::mousePressEvent(QMouseEvent* event) {
    const int at = static_cast<int>(event->position().y()) / kRow;
    if (at >= 0 && at < shown())
        emit chosen(m_groups[at].first);
}

} // namespace holdfast::app
