"""The earth: digging, berm, overflow, materials, costs, pegging out.

Decided here:

- A berm a tenth high takes no more soil: hand-tamped soil lies about as it lay, and its settling
  to 0.9 is that tenth. Soil bought for a berm is measured loose, as it comes.
- What is paid is what is taken home: whole bags and pieces, the steps a yard loads. What not
  everybody wants is bought where it has a price. No price is ever assumed.
- The work is spans for one person (``earth/work``), summed in three steps by the forecast, not by
  days: no floor lies open to rain between two of them.
- The overflow follows the form: a notch in a berm, its peak flow an inch under the crest and 2 in
  deep at the most, or a lip where the lawn is the rim, which may fill to the lawn. Its width
  follows; a higher rim is offered, not taken.
- A buried pipe is held against one datum, the ground: cover, its outside and its fall. It comes
  out before the bed; where the ground falls less there is none, and a channel of stone is counted
  in its place. Channels are one a downspout, each as long as the one that was measured.
- Peak flow over the notch includes the rain inside the crest and the cut edge; the flow from the
  catchment alone is listed beside it.
"""
