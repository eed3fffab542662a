// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/desk/knock.h"

#include "app/desk/machine_settings.h"

#include <QtEndian>

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

namespace holdfast::app {

namespace {

constexpr int kRate = 44'100;
constexpr double kSecondKnockAt = 0.17; // seconds
constexpr double kLength = 0.55;        // of both knocks, with the rest behind them
constexpr double kDiesIn = 0.37;        // a knock: by then nothing of it is heard
constexpr double kRise = 0.002;         // so that it begins without a click
constexpr double kFall = 0.02;          // and ends without one
constexpr double kFirstPitch = 660;     // Hz
constexpr double kSecondPitch = 495;    // a fourth lower

constexpr double kLoudPeak = 0.9; // of the largest sample
constexpr double kSoftPeak = 0.2; // 13 dB less

// The tones of a free wooden bar, by their share of its pitch; the higher ones are weaker and die sooner. The
// ratios are those of a uniform bar free at both ends: 2.756 and 5.404 (Fletcher and Rossing, The Physics of
// Musical Instruments, 2nd ed., section 2.15).
struct BarTone {
    double ratio;
    double strength;
    double diesIn; // seconds until it is a third as strong
};
constexpr std::array kTones{BarTone{1.0, 1.0, 0.060}, BarTone{2.756, 0.45, 0.025},
                            BarTone{5.404, 0.2, 0.010}};

void addKnock(std::vector<double>& samples, double at, double pitch) {
    const auto end = std::min(samples.size(), static_cast<std::size_t>((at + kDiesIn) * kRate));
    for (auto sample = static_cast<std::size_t>(at * kRate); sample < end; ++sample) {
        const double since = static_cast<double>(sample) / kRate - at;
        const double rise = std::min(1.0, since / kRise);
        for (const BarTone& tone : kTones)
            samples[sample] += rise * tone.strength * std::exp(-since / tone.diesIn) *
                               std::sin(2 * std::numbers::pi * pitch * tone.ratio * since);
    }
}

std::vector<double> samplesOf(int times) {
    std::vector<double> samples(static_cast<std::size_t>(kLength * times * kRate));
    for (int time = 0; time < times; ++time) {
        addKnock(samples, time * kLength, kFirstPitch);
        addKnock(samples, time * kLength + kSecondKnockAt, kSecondPitch);
    }
    const auto falling = static_cast<std::size_t>(kFall * kRate);
    for (std::size_t back = 0; back < std::min(falling, samples.size()); ++back)
        samples[samples.size() - 1 - back] *= static_cast<double>(back) / static_cast<double>(falling);
    return samples;
}

template <class Number>
void append(QByteArray& bytes, Number number) {
    const Number little = qToLittleEndian(number);
    bytes.append(reinterpret_cast<const char*>(&little), sizeof little);
}

QByteArray headOf(quint32 dataBytes) {
    constexpr quint16 kPlainSamples = 1;
    constexpr quint16 kChannels = 1;
    constexpr quint16 kBytes = 2;
    QByteArray head("RIFF");
    append<quint32>(head, 36 + dataBytes);
    head.append("WAVEfmt ");
    append<quint32>(head, 16);
    append<quint16>(head, kPlainSamples);
    append<quint16>(head, kChannels);
    append<quint32>(head, kRate);
    append<quint32>(head, kRate * kBytes);
    append<quint16>(head, kBytes);
    append<quint16>(head, kBytes * 8);
    head.append("data");
    append<quint32>(head, dataBytes);
    return head;
}

const QString kOff = QStringLiteral("off");
const QString kSoft = QStringLiteral("soft");

} // namespace

QByteArray knockWave(Loudness loudness, int times) {
    if (loudness == Loudness::Off || times < 1)
        return {};
    const std::vector<double> samples = samplesOf(times);
    double loudest = 0;
    for (const double sample : samples)
        loudest = std::max(loudest, std::abs(sample));
    const double peak = loudness == Loudness::Loud ? kLoudPeak : kSoftPeak;
    QByteArray wave = headOf(static_cast<quint32>(samples.size() * sizeof(qint16)));
    for (const double sample : samples)
        append<qint16>(wave, static_cast<qint16>(std::lround(sample / loudest * peak * 32'767)));
    return wave;
}

Loudness keptLoudness() {
    const QString kept = machineSetting(kLoudnessSetting);
    return kept == kOff ? Loudness::Off : kept == kSoft ? Loudness::Soft : Loudness::Loud;
}

void keepLoudness(Loudness loudness) {
    keepMachineSetting(kLoudnessSetting, loudness == Loudness::Off    ? kOff
                                         : loudness == Loudness::Soft ? kSoft
                                                                      : QString());
}

} // namespace holdfast::app
