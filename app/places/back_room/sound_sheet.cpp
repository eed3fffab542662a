#include "app/places/back_room/sound_sheet.h"

#include <QCoreApplication>

namespace holdfast::app {

namespace {

class SoundWords {
    Q_DECLARE_TR_FUNCTIONS(BackRoom)

public:
    static QString loudness(Loudness loudness) {
        switch (loudness) {
        case Loudness::Off:
            return tr("off");
        case Loudness::Soft:
            return tr("soft");
        case Loudness::Loud:
            break;
        }
        return tr("loud");
    }
};

} // namespace

RoomSheet soundSheet(const RoomFile& file) {
    RoomSheet sheet;
    sheet.title = SoundWords::tr("Sound");
    sheet.summary = SoundWords::loudness(file.loudness);
    sheet.intro =
        SoundWords::tr("When a count at the press ends, two knocks on wood are heard, and the screen says "
                       "what to do. When a garment has been under heat too long, they are heard three "
                       "times.");
    const auto add = [&](Loudness loudness, const QString& name, const QString& text, const QString& offer) {
        RoomLine line;
        line.name = name;
        line.text = text;
        if (loudness == file.loudness) {
            line.state = SoundWords::tr("chosen");
            line.stateIcon = QStringLiteral("done");
            line.tone = Tone::Ready;
        } else {
            line.offer = offer;
            line.deed = MakeAsLoud{loudness};
        }
        sheet.lines.append(line);
    };
    add(Loudness::Loud, SoundWords::tr("Loud"), SoundWords::tr("heard beside a fan"),
        SoundWords::tr("Make it loud"));
    add(Loudness::Soft, SoundWords::tr("Soft"), SoundWords::tr("for a quiet room"),
        SoundWords::tr("Make it soft"));
    add(Loudness::Off, SoundWords::tr("Off"), SoundWords::tr("only the screen says it"),
        SoundWords::tr("Turn it off"));
    sheet.acts.append(
        {SoundWords::tr("Hear it"), QStringLiteral("stopwatch"), QKeySequence(Qt::Key_H), HearKnock{}});
    sheet.note =
        SoundWords::tr("This is for this laptop only. While another window is in front, the desktop shows a "
                       "notice as well; choosing it brings the press walk to the front.");
    return sheet;
}

} // namespace holdfast::app
