// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/places/press_walk/count_layout.h"

#include "app/places/press_walk/text_lines.h"

#include <array>

namespace holdfast::app {

namespace {

constexpr qreal kLineGap = 4;

struct Sizes {
    Type word;
    Type detail;
    Type note;
    bool mayBreak; // the word into several lines
};

constexpr std::array kSizes{
    Sizes{Type::Panel, Type::Number, Type::BodyStrong, false},
    Sizes{Type::Panel, Type::Value, Type::BodyStrong, false},
    Sizes{Type::Next, Type::Number, Type::BodyStrong, false},
    Sizes{Type::Next, Type::Value, Type::BodyStrong, false},
    Sizes{Type::Number, Type::Value, Type::BodyStrong, false},
    Sizes{Type::Next, Type::Value, Type::BodyStrong, true},
    Sizes{Type::Number, Type::Value, Type::BodyStrong, true},
    Sizes{Type::Number, Type::SupportStrong, Type::SupportStrong, true},
    Sizes{Type::Value, Type::SmallStrong, Type::SmallStrong, true},
};

class Laying {
public:
    explicit Laying(const QRectF& room)
        : m_room(room)
        , m_y(room.top()) {}

    void add(const QString& text, Type type, PanelLine::Part part) {
        if (text.isEmpty())
            return;
        if (!m_lines.empty())
            m_y += kLineGap;
        for (const QString& line : brokenLines(text, type, m_room.width())) {
            const qreal high = lineHeight(type);
            m_lines.push_back({line, type, QRectF(m_room.left(), m_y, m_room.width(), high), part});
            m_y += high;
        }
    }

    bool fits() const { return m_y <= m_room.bottom(); }
    std::vector<PanelLine> take() { return std::move(m_lines); }

private:
    QRectF m_room;
    qreal m_y;
    std::vector<PanelLine> m_lines;
};

Laying laid(const PanelText& text, const QRectF& room, const Sizes& sizes) {
    Laying laying(room);
    laying.add(text.step, Type::ListStrong, PanelLine::Part::Step);
    laying.add(text.word, sizes.word, PanelLine::Part::Word);
    laying.add(text.detail, sizes.detail, PanelLine::Part::Detail);
    laying.add(text.note, sizes.note, PanelLine::Part::Note);
    return laying;
}

} // namespace

std::vector<PanelLine> panelLines(const PanelText& text, const QRectF& room) {
    const PanelText withoutDetail{text.step, text.word, {}, text.note};
    const PanelText noteAlone{{}, text.note.isEmpty() ? text.word : QString(), {}, text.note};
    for (const PanelText& shown : {text, withoutDetail, noteAlone})
        for (const Sizes& sizes : kSizes) {
            if (!sizes.mayBreak && widthOf(shown.word, sizes.word) > room.width())
                continue;
            if (Laying laying = laid(shown, room, sizes); laying.fits())
                return laying.take();
        }
    return laid(noteAlone, room, kSizes.back()).take();
}

} // namespace holdfast::app
