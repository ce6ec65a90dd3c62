#include "idealise/response.h"

namespace thinskin::idealise {

namespace {

/// Resultant and place of the pushes that `counts` takes; not solved: no figures.
template <class Counts> results::Contact pushes(const Structure& s, const Run& run, const std::string& part, Counts counts)
{
    results::Contact c{part, run.load_case.name, 0, {0, 0}};
    for (const ContactJoint& j : s.contacts) {
        if (!run.solved(0) || !counts(j)) continue;
        const double push = -run.state(0).lambda(j.joint);
        c.resultant_N += push;
        c.at_mm[0] += push * j.at.x;
        c.at_mm[1] += push * j.at.y;
    }
    if (c.resultant_N > 0) c.at_mm = {c.at_mm[0] / c.resultant_N, c.at_mm[1] / c.resultant_N};
    return c;
}

/// Pushes of each plate on the skin.
void plate_contacts(const Structure& s, const Run& run, std::vector<results::Contact>& out)
{
    for (std::size_t i = 0; i < s.plates.size(); ++i)
        out.push_back(pushes(s, run, "plate " + s.layout->plates[i].name, [i](const ContactJoint& j) { return j.kind == ContactJoint::Kind::plate_skin && j.plate == static_cast<int>(i); }));
}

/// Pushes of one bracket's leg, or of all feet of the item (bracket = -1).
void contacts_of(const Structure& s, const Run& run, int bracket, const std::string& name, std::vector<results::Contact>& out)
{
    out.push_back(pushes(s, run, name, [bracket](const ContactJoint& j) { return j.bracket == bracket && (bracket >= 0 || j.foot >= 0); }));
}

void contacts(const Structure& s, const Run& run, std::vector<results::Contact>& out)
{
    for (std::size_t b = 0; b < s.brackets.size(); ++b) contacts_of(s, run, static_cast<int>(b), "leg " + s.layout->brackets[b].name, out);
    if (s.item && !s.layout->item->feet.empty()) contacts_of(s, run, -1, "feet of " + s.layout->item->name, out);
}

} // namespace

std::vector<results::Contact> contact_pushes(const Structure& s, const Run& run)
{
    std::vector<results::Contact> out;
    contacts(s, run, out);
    plate_contacts(s, run, out);
    return out;
}

} // namespace thinskin::idealise
