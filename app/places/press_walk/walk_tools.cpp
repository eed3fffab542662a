#include "app/places/press_walk/walk_tools.h"

#include "app/desk/formats.h"
#include "app/theme/measures.h"
#include "app/theme/tokens.h"
#include "app/theme/type.h"
#include "app/widgets/button.h"
#include "app/widgets/progress_beads.h"

#include <QPainter>

#include <cmath>

namespace holdfast::app {

namespace {

constexpr int kToolsGap = 18;
constexpr int kClock = 74;
constexpr int kToolsHeight = 44;

} // namespace

WalkTools::WalkTools(QWidget* parent)
    : QWidget(parent) {
    setObjectName(QStringLiteral("walkTools"));
    m_beads = new ProgressBeads(this);
    m_beads->setObjectName(QStringLiteral("walkBeads"));
    m_sheet = new Button(tr("Day sheet"), Button::Kind::Quiet, this);
    m_sheet->setObjectName(QStringLiteral("printDaySheet"));
    m_sheet->setToolTip(tr("Print the walk of the day"));
    m_sheet->showKey(QKeySequence(Qt::Key_D));
    connect(m_sheet, &Button::clicked, this, &WalkTools::daySheetAsked);
    setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
}

void WalkTools::show(const Walk& walk, const Now& now) {
    const auto pressed = static_cast<int>(walk.pressed);
    const auto total = static_cast<int>(walk.total);
    m_beads->setVisible(total > 0);
    m_beads->set(pressed, total, tr("%1 of %2 pressed").arg(pressed).arg(total));
    m_ends.clear();
    if (pressed < total) {
        const LocalTime ends = now.toLocal(walk.ends);
        m_ends = dateOf(ends) == now.today() ? clock(ends) : tr("%1 %2").arg(day(dateOf(ends)), clock(ends));
    }
    setAccessibleName(m_ends.isEmpty() ? QString() : tr("ends about %1").arg(m_ends));
    updateGeometry();
    place();
    update();
}

void WalkTools::setClock(const QString& time) {
    if (m_clock == time)
        return;
    m_clock = time;
    update();
}

int WalkTools::endsWidth() const {
    if (m_ends.isEmpty())
        return 0;
    return static_cast<int>(
        std::ceil(widthOf(tr("ends about "), Type::Body) + widthOf(m_ends, Type::BodyStrong)));
}

int WalkTools::widthWith(int beads) const {
    const int ends = endsWidth() > 0 ? endsWidth() + kToolsGap + 6 : 0;
    return m_sheet->sizeHint().width() + kToolsGap + (beads > 0 ? beads + kToolsGap : 0) + ends + kClock;
}

QSize WalkTools::sizeHint() const {
    return {widthWith(m_beads->isHidden() ? 0 : m_beads->sizeHint().width()), kToolsHeight};
}

QSize WalkTools::minimumSizeHint() const {
    return {widthWith(m_beads->isHidden() ? 0 : m_beads->minimumSizeHint().width()), kToolsHeight};
}

void WalkTools::place() {
    const int right = width() - kClock - (endsWidth() > 0 ? endsWidth() + kToolsGap + 6 : 0) - kToolsGap;
    const QSize whole = m_beads->sizeHint();
    const int left = m_sheet->sizeHint().width() + kToolsGap;
    const int wide = right - left < whole.width() ? m_beads->minimumSizeHint().width() : whole.width();
    m_beads->setGeometry(right - wide, (height() - whole.height()) / 2, wide, whole.height());
    m_sheet->setGeometry(0, 0, m_sheet->sizeHint().width(), kToolsHeight);
}

void WalkTools::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    place();
}

void WalkTools::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Tokens& dyes = tokens();
    paintLine(painter, QRectF(rect()), m_clock, Type::Number, dyes.ink, Qt::AlignRight);
    if (m_ends.isEmpty())
        return;
    const QRectF ends(width() - kClock - endsWidth() - 6, 0, endsWidth(), height());
    paintLine(painter, ends, tr("ends about "), Type::Body, dyes.ink2);
    paintLine(painter, ends, m_ends, Type::BodyStrong, dyes.ink, Qt::AlignRight);
}

} // namespace holdfast::app
